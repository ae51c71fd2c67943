import type { Finding, Report, ReportCurve } from '../../app/wire';
import { words } from '../../app/words';

/** Curves that belong to the flight over the field rather than to the model. */
const flight = /^(engine_out|weather|landing|launch|circuit|climb|link_loss|reach)\./;

/** True for a curve of the flight over the field. */
export const isFlightCurve = (id: string | undefined): boolean => flight.test(id ?? '');

/** Findings of the parts of the sheet, by their ids. */
const parts = {
  plan: /^(link_loss|separation|circuit)\./,
  launch: /^(climb|liftoff|launch)\.(?!abort|engine_failure)/,
  landing: /^(landing|approach)\./,
  failures: /^(engine_out\.|link_loss\.|launch\.(abort|engine_failure)$)/,
  wind: /^weather\.(crosswind|gust|wake)$/,
} satisfies Record<string, RegExp>;

/** A part of the sheet. */
export type Part = keyof typeof parts;

/** Findings of a part in the report's own order: worst first. */
export function findingsOf(report: Report | undefined, part: Part): Finding[] {
  return (report?.findings ?? []).filter((f) => parts[part].test(f.id ?? ''));
}

/** The deciding sentence of a part: its worst finding, or what stands in for it. */
export function decidingLine(report: Report | undefined, part: Part, otherwise: string): string {
  const worst = findingsOf(report, part)[0];
  if (!worst) return otherwise;
  const verdict = words.verdict[worst.verdict ?? 'VERDICT_UNKNOWN'];
  return words.fieldSheet.line(worst.title ?? '', verdict, worst.note ?? '');
}

/** Curves of a stopped engine and a lost link. */
export function failureCurves(report: Report | undefined): ReportCurve[] {
  return (report?.curves ?? []).filter((c) => isFlightCurve(c.id) && !c.id?.startsWith('weather.'));
}

/** The finding of an id. */
export function findingOf(report: Report | undefined, id: string): Finding | undefined {
  return report?.findings?.find((f) => f.id === id);
}
