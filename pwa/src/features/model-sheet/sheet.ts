import { numberText } from '../../app/units';
import type { ModelDescription, Report, ReportCurve } from '../../app/wire';
import { words } from '../../app/words';
import { isFlightCurve } from '../field-sheet/fieldSheet';

const order = {
  lift: ['lift.curve', 'drag.polar', 'lift.span_loading'],
  balance: ['trim.elevator', 'balance.burn'],
};

/** Curves of a part of the sheet in its order; curves that no part names stand with lift and drag, those of the flight over the field not here. */
export function curvesOf(report: Report | undefined, part: keyof typeof order): ReportCurve[] {
  const curves = report?.curves ?? [];
  const named = order[part]
    .map((id) => curves.find((c) => c.id === id))
    .filter((c): c is ReportCurve => c !== undefined);
  if (part !== 'lift') return named;
  const known = Object.values(order).flat();
  return [...named, ...curves.filter((c) => !known.includes(c.id ?? '') && !isFlightCurve(c.id))];
}

/** A diagram along the span without the fins, which stand across it. */
export function alongSpan(curve: ReportCurve, model: ModelDescription): ReportCurve {
  if (curve.id !== 'lift.span_loading') return curve;
  const fins = (model.surfaces ?? []).filter((s) => s.role === 'SURFACE_ROLE_FIN').map((s) => s.name ?? '');
  const ofFin = (name: string): boolean => fins.some((f) => name === f || name.startsWith(`${f}, `));
  return { ...curve, series: (curve.series ?? []).filter((s) => !ofFin(s.name ?? '')) };
}

/** A number of the report by the id of its quantity, else of its finding; undefined when it was not computed. */
export function numberOf(report: Report | undefined, id: string): number | undefined {
  const quantity = report?.quantities?.find((q) => q.id === id)?.value;
  return quantity ?? report?.findings?.find((f) => f.id === id)?.value;
}

const text = (value: number | undefined): string | undefined =>
  value === undefined ? undefined : numberText(value);

/** The deciding numbers of lift and drag. */
export function liftLine(report: Report | undefined): string {
  return words.sheet.liftLine(
    text(numberOf(report, 'lift.maximum_coefficient')),
    text(numberOf(report, 'drag.zero_lift')),
  );
}

/** A share as a percentage. */
export function percent(ratio: number | undefined): string | undefined {
  return ratio === undefined ? undefined : `${numberText(Math.round(ratio * 1000) / 10)}\u00a0%`;
}

/** The static margins in words. */
export function balanceLine(report: Report | undefined): string {
  return words.sheet.balanceLine(
    percent(numberOf(report, 'balance.margin_full')),
    percent(numberOf(report, 'balance.margin_empty')),
  );
}
