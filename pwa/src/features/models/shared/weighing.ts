import { shownUnit, steppedText, toShown, type UnitChoice } from '../../../app/units';
import type { Finding, ModelDescription, Report, ReportQuantity } from '../../../app/wire';
import { valueText } from '../../findings/chain';

/** What a report says about the weighing: the main figures, others beside them, and the findings on them. */
export type WeighResult = { main: ReportQuantity[]; rest: ReportQuantity[]; findings: Finding[] };

const main = ['mass.empty', 'balance.empty_x'];
const rest = [
  'mass.weighed',
  'mass.listed',
  'mass.difference',
  'mass.balance_difference',
  'mass.takeoff',
  'balance.full_x',
];

/** Everything about the weighing in a report; empty parts where nothing was computed. */
export function resultOf(report: Report | null | undefined): WeighResult {
  const named = (ids: string[]): ReportQuantity[] =>
    ids.map((id) => report?.quantities?.find((q) => q.id === id)).filter((q) => q !== undefined);
  return {
    main: named(main),
    rest: named(rest),
    findings: (report?.findings ?? []).filter((f) => f.id === 'mass.reconciled'),
  };
}

type Mass = NonNullable<ModelDescription['mass']>;

/** True where a typed mass or balance point stands before what the scales say. */
export function typedBeforeScales(mass: Mass | undefined): boolean {
  const typed = mass?.emptyMassKg?.value ?? mass?.emptyBalanceXMeters?.value;
  return typed !== undefined && (mass?.scaleReadings?.length ?? 0) > 0;
}

/** The same without typed mass and balance point, so that the scales decide. */
export function letScalesDecide(mass: Mass): Mass {
  const drop = ['emptyMassKg', 'emptyBalanceXMeters'];
  return Object.fromEntries(Object.entries(mass).filter(([name]) => !drop.includes(name)));
}

/** Masses to the gram and lengths to the millimetre, as scales and rulers read them; anything else as everywhere. */
export function fineText(q: ReportQuantity, units: UnitChoice): string {
  if (q.value === undefined || (q.unit !== 'kg' && q.unit !== 'm')) return valueText(q, units);
  return `${steppedText(toShown(q.value, q.unit, units), 0.001)}\u00a0${shownUnit(q.unit, units)}`;
}
