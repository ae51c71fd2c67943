import { show, type UnitChoice } from '../../app/units';
import type { Finding, Report, VerdictCounts } from '../../app/wire';
import { words } from '../../app/words';

/** The limit in words: "at least 3.00 m". */
export function limitText(f: Finding, units: UnitChoice): string {
  const unit = f.unit ?? '1';
  const text = (v: number | undefined): string => show(v, unit, units);
  switch (f.limitSense) {
    case 'LIMIT_SENSE_AT_LEAST':
      return words.findings.atLeast(text(f.limit));
    case 'LIMIT_SENSE_AT_MOST':
      return words.findings.atMost(text(f.limit));
    case 'LIMIT_SENSE_WITHIN':
      return words.findings.within(text(f.limit), text(f.upperLimit));
    default:
      return words.findings.noLimit;
  }
}

/** The deciding numbers of a finding in a sentence, for those who hear it rather than see it. */
export function sentenceOf(f: Finding, units: UnitChoice): string {
  const unit = f.unit ?? '1';
  const verdict = words.verdict[f.verdict ?? 'VERDICT_UNKNOWN'];
  if (f.value === undefined) return `${f.title ?? ''}: ${verdict}.`;
  const band = `${show(f.bandLow, unit, units)} to ${show(f.bandHigh, unit, units)}`;
  const spread = f.bandLow === undefined ? '' : ` (${band})`;
  return `${f.title ?? ''}: ${show(f.value, unit, units)}${spread}, ${words.findings.limit} ${limitText(f, units)}: ${verdict}.`;
}

/** Findings that hold, and the others in the report's own order: worst first. */
export function split(report: Report): { open: Finding[]; holding: Finding[] } {
  const findings = report.findings ?? [];
  const holds = (f: Finding): boolean => f.verdict === 'VERDICT_HOLDS';
  return { open: findings.filter((f) => !holds(f)), holding: findings.filter(holds) };
}

/** Counts in one line, absent counts being zero. */
export function countsText(counts: VerdictCounts | undefined): string {
  if (!counts) return words.notAssessed;
  return words.counts({
    fails: counts.failsCount ?? 0,
    tight: counts.tightCount ?? 0,
    unknown: counts.unknownCount ?? 0,
    holds: counts.holdsCount ?? 0,
  });
}

/** The input that decides most of the spread of the findings that are tight or fail. */
export function measureNext(report: Report): string | undefined {
  const shares = new Map<string, number>();
  for (const f of report.findings ?? []) {
    if (f.verdict !== 'VERDICT_TIGHT' && f.verdict !== 'VERDICT_FAILS') continue;
    for (const s of f.spreadShares ?? []) {
      if (!/^(model|field|launchPlan|day|launch_plan)\b/.test(s.input ?? '')) continue;
      shares.set(s.input ?? '', (shares.get(s.input ?? '') ?? 0) + (s.shareRatio ?? 0));
    }
  }
  return [...shares.entries()].sort((a, b) => b[1] - a[1])[0]?.[0];
}

/** Label of the form's box for a path, however the path writes its names. */
function boxLabel(path: string): string | undefined {
  const camel = path.replace(/\[(\d+)\]/g, '.$1').replace(/_([a-z])/g, (_, c: string) => c.toUpperCase());
  const entries: Record<string, { label: string }> = words.entries;
  return entries[camel]?.label.toLowerCase();
}

/** A path of the document as words: "model, mass, empty mass kg". */
export function pathText(path: string): string {
  const label = boxLabel(path);
  if (label) return label;
  return path
    .replace(/\[(\d+)\]/g, (_, n: string) => ` ${String(Number(n) + 1)}`)
    .split('.')
    .map((part) =>
      part
        .replace(/_/g, ' ')
        .replace(/([a-z0-9])([A-Z])/g, '$1 $2')
        .toLowerCase(),
    )
    .join(', ');
}

/** Cautions of the report, or the standing ones when it carries none. */
export function cautionsOf(report: Report | undefined): string[] {
  return report?.cautions?.length ? report.cautions : words.cautions;
}
