import { show, type UnitChoice } from '../../app/units';
import type { Finding, Report, VerdictCounts } from '../../app/wire';
import { words } from '../../app/words';
import { bareName, dotted, getIn } from '../../app/paths';

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

/** A title within a sentence: that of a rule is a sentence of its own and loses its full stop. */
export const titleOf = (f: Finding | undefined): string => (f?.title ?? '').replace(/\.$/, '');

/** The deciding numbers of a finding in a sentence, for those who hear it rather than see it. */
export function sentenceOf(f: Finding, units: UnitChoice): string {
  const unit = f.unit ?? '1';
  const verdict = words.verdict[f.verdict ?? 'VERDICT_UNKNOWN'];
  if (f.value === undefined) return `${titleOf(f)}: ${verdict}.`;
  const band = `${show(f.bandLow, unit, units)} to ${show(f.bandHigh, unit, units)}`;
  const spread = f.bandLow === undefined ? '' : ` (${band})`;
  return `${titleOf(f)}: ${show(f.value, unit, units)}${spread}, ${words.findings.limit} ${limitText(f, units)}: ${verdict}.`;
}

/** A probability as so many of 100, never rounded up to all or down to none. */
export function ofHundred(probability: number): string {
  const n = probability * 100;
  if (n > 99 && n < 100) return String(Math.floor(n * 10) / 10);
  if (n > 0 && n < 1) return String(Math.max(0.1, Math.round(n * 10) / 10));
  return String(Math.round(n));
}

/** How often a finding holds against what its class asks for; undefined where no samples were drawn. */
export function oddsText(f: Finding): string | undefined {
  if (f.holdsProbability === undefined || f.requiredProbability === undefined) return undefined;
  const who = words.findings.classes[f.findingClass ?? 'FINDING_CLASS_UNSPECIFIED'];
  return words.findings.odds(ofHundred(f.holdsProbability), ofHundred(f.requiredProbability), who);
}

const shownShares = 5;
const leastShare = 0.005;

/** The inputs that decide a finding's spread, largest first, as far as they count. */
export function topShares(f: Finding): { input: string; share: number }[] {
  return (f.spreadShares ?? [])
    .map((s) => ({ input: s.input ?? '', share: s.shareRatio ?? 0 }))
    .filter((s) => s.share >= leastShare)
    .slice(0, shownShares);
}

/** A share as a whole percentage. */
export function shareText(share: number): string {
  return `${String(Math.round(share * 100))}\u00a0%`;
}

/** True for the finding of a published rule. */
export const isRule = (finding: Finding): boolean => (finding.id ?? '').startsWith('rule.');

export type Split = { open: Finding[]; holding: Finding[] };

/** The findings of the computation and those of published rules. */
export function split(report: Report): { own: Split; rules: Split } {
  const findings = report.findings ?? [];
  return { own: divided(findings.filter((f) => !isRule(f))), rules: divided(findings.filter(isRule)) };
}

/** Findings that hold, and the others in the report's own order: worst first. */
function divided(findings: Finding[]): Split {
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
  const entries: Record<string, { label: string }> = words.entries;
  return entries[dotted(path)]?.label.toLowerCase();
}

/** The name of an entry of a list of the document, where it has one. */
function nameAt(document: unknown, path: string): string | undefined {
  const name = (getIn(document, path) as { name?: unknown } | undefined)?.name;
  return typeof name === 'string' && name !== '' ? name : undefined;
}

/** One name of a path as words, its unit left out: "leadingEdgeXMeters" is "leading edge x". */
function spoken(part: string): string {
  return bareName(part)
    .replace(/([a-z0-9])([A-Z])/g, '$1 $2')
    .toLowerCase();
}

/** A path of the document as words: "model, fin, station 2, chord". Entries that carry a name are called by it. */
export function pathText(path: string, document?: unknown): string {
  if (path === 'confirmations') return words.findings.confirmation;
  const label = boxLabel(path);
  if (label) return label;
  const parts = dotted(path).split('.');
  const said: string[] = [];
  for (const [i, part] of parts.entries()) {
    if (!/^\d+$/.test(part)) said.push(spoken(part));
    else {
      const list = said.pop() ?? '';
      const name = nameAt(document, parts.slice(0, i + 1).join('.'));
      said.push(name ?? `${list} ${String(Number(part) + 1)}`);
    }
  }
  return said.join(', ');
}

/** A sentence of the core with the paths in it as words. */
export function inWords(text: string, document?: unknown): string {
  return text.replace(
    /\b(?:model|field|launchPlan|day|limits|confirmations)(?:\.[a-zA-Z]+|\[\d+\])+/g,
    (path) => `\u201c${pathText(path, document)}\u201d`,
  );
}

/** Inputs that most unknown findings wait for, with how many each holds up. */
export function waitedFor(findings: Finding[]): { input: string; count: number }[] {
  const counts = new Map<string, number>();
  for (const f of findings)
    for (const input of f.verdict === 'VERDICT_UNKNOWN' ? (f.missing ?? []) : [])
      counts.set(input, (counts.get(input) ?? 0) + 1);
  return [...counts].map(([input, count]) => ({ input, count })).sort((a, b) => b.count - a.count);
}

/** An input behind a spread: a path of the document as words, or a method's own spread by its name. */
export function inputText(input: string, document?: unknown): string {
  if (/^(model|field|launchPlan|day|limits)\b/.test(input)) return pathText(input, document);
  return input
    .replace(/^method: /, words.findings.ofMethod)
    .replace(/^scale: items$/, words.findings.ofScale);
}

/** Cautions of the report, or the standing ones when it carries none. */
export function cautionsOf(report: Report | undefined): string[] {
  return report?.cautions?.length ? report.cautions : words.cautions;
}
