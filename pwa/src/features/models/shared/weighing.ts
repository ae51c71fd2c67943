import { shownUnit, steppedText, toShown, type UnitChoice } from '../../../app/units';
import type { Finding, Report, ReportQuantity } from '../../../app/wire';
import { valueText } from '../../findings/chain';

/** What a report says about the weighing: the main figures, all others, and the findings on them. */
export type WeighResult = { main: ReportQuantity[]; rest: ReportQuantity[]; findings: Finding[] };

const main = ['weighing.mass', 'weighing.balance_x'];

/** Everything about the weighing in a report; empty parts where nothing was computed. */
export function resultOf(report: Report | null | undefined): WeighResult {
  const all = (report?.quantities ?? []).filter((q) => q.id?.startsWith('weighing.'));
  return {
    main: main.map((id) => all.find((q) => q.id === id)).filter((q) => q !== undefined),
    rest: all.filter((q) => !main.includes(q.id ?? '')),
    findings: (report?.findings ?? []).filter((f) => f.id?.startsWith('weighing.')),
  };
}

/** Masses to the gram and lengths to the millimetre, as scales and rulers read them; anything else as everywhere. */
export function fineText(q: ReportQuantity, units: UnitChoice): string {
  if (q.value === undefined || (q.unit !== 'kg' && q.unit !== 'm')) return valueText(q, units);
  return `${steppedText(toShown(q.value, q.unit, units), 0.001)}\u00a0${shownUnit(q.unit, units)}`;
}
