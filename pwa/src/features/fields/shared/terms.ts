import { show, type UnitChoice } from '../../../app/units';
import type { FieldDescription } from '../../../app/wire';
import { words } from '../../../app/words';
import { datumOf } from './exchange';

const w = words.fields;

type Permission = NonNullable<FieldDescription['permission']>;

/** Says when the owner's permission does not cover a day; empty when it does or no dates are given. RFC 3339 dates sort as text. */
export function permissionState(permission: Permission | undefined, today = new Date()): string {
  const day = today.toISOString().slice(0, 10);
  const { validFromDate: from = '', validToDate: to = '' } = permission ?? {};
  if (to !== '' && day > to) return w.permissionOver;
  return from !== '' && day < from ? w.permissionEarly : '';
}

/** What the field asks of those who fly there, as pairs of a word and its value. */
export function termsOf(field: FieldDescription, units: UnitChoice): { label: string; text: string }[] {
  const { permission: p, survey: s } = field;
  const datum = datumOf(field);
  const row = (label: string, text: string | undefined): { label: string; text: string } => ({
    label,
    text: text ?? w.notGiven,
  });
  const metres = (v: number | undefined): string | undefined =>
    v === undefined ? undefined : show(v, 'm', units);
  return [
    row(
      w.permission,
      p?.validFromDate && p.validToDate
        ? w.permissionLine(p.grantedBy ?? '', p.validFromDate, p.validToDate)
        : w.permissionNone,
    ),
    row(w.quiet, p?.quietFrom && p.quietTo ? w.quietLine(p.quietFrom, p.quietTo) : undefined),
    row(w.heightLimit, metres(field.heightLimitMeters?.value)),
    row(w.elevation, metres(field.elevationMeters?.value)),
    row(w.roughness, w.roughnessClasses[field.roughness ?? 'ROUGHNESS_CLASS_UNSPECIFIED']),
    row(w.datum, datum ? `${datum.latitude.toFixed(6)}°, ${datum.longitude.toFixed(6)}°` : undefined),
    row(
      w.survey,
      s
        ? [
            w.methods[s.method ?? 'SURVEY_METHOD_UNSPECIFIED'],
            s.date,
            s.surveyedBy,
            s.positionSpreadMeters === undefined ? '' : `± ${show(s.positionSpreadMeters, 'm', units)}`,
          ]
            .filter(Boolean)
            .join(', ')
        : undefined,
    ),
  ];
}
