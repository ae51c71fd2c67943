import { show, type UnitChoice } from '../../app/units';
import { spreadWords } from '../../app/spreadWords';
import type { Finding, MeasurementAdvice, Report } from '../../app/wire';
import { pathText } from '../findings/findings';

/** Findings by what their samples say. */
export type Sorted = { open: Finding[]; unproven: Finding[]; holding: Finding[]; without: Finding[] };

const oftenEnough = (f: Finding): boolean =>
  f.holdsProbability !== undefined && f.holdsProbability >= (f.requiredProbability ?? 1);

/**
 * Sorts findings: those that hold less often than asked or fail, those that hold often enough and stay tight for another reason, such as a rule that
 * nobody verified, those that hold often enough, and those that no samples speak of.
 */
export function sorted(report: Report): Sorted {
  const out: Sorted = { open: [], unproven: [], holding: [], without: [] };
  for (const f of report.findings ?? []) {
    if (f.verdict === 'VERDICT_TIGHT' && oftenEnough(f)) out.unproven.push(f);
    else if (f.verdict === 'VERDICT_FAILS' || f.verdict === 'VERDICT_TIGHT') out.open.push(f);
    else if (f.holdsProbability === undefined) out.without.push(f);
    else out.holding.push(f);
  }
  return out;
}

/** The finding as its samples have it: the median in place of the value of the middle inputs. */
export function byMedian(f: Finding): Finding {
  return f.median === undefined ? f : { ...f, value: f.median };
}

/** The band in words; empty where there is none. */
export function bandText(f: Finding, units: UnitChoice): string {
  if (f.bandLow === undefined || f.bandHigh === undefined) return '';
  const text = (v: number): string => show(v, f.unit ?? '1', units);
  return spreadWords.band(text(f.bandLow), text(f.bandHigh));
}

/** A measurement worth taking, in words. */
export type Advice = { input: string; title: string; how: string; settles: string[]; share: number };

/** The measurements worth taking, with the findings that each settles by their titles. */
export function advices(report: Report, document: unknown): Advice[] {
  const titleOf = (id: string): string => report.findings?.find((f) => f.id === id)?.title ?? id;
  return (report.measureNext ?? []).map((m: MeasurementAdvice) => ({
    input: m.input ?? '',
    title: m.title || pathText(m.input ?? '', document),
    how: m.how ?? '',
    settles: (m.findingIds ?? []).map(titleOf),
    share: m.shareRatio ?? 0,
  }));
}

/** Seconds of a run, to a tenth. */
export function secondsText(ms: number): string {
  return spreadWords.seconds((ms / 1000).toFixed(1));
}
