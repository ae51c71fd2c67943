import { setIn } from '../../../app/paths';
import type { FieldDescription, FieldPart, SurveyFeature } from '../../../app/wire';
import { datumOf } from './exchange';
import type { Walked } from './fieldDraft';
import { degrees, millimetres, toMetres, type Metres, type Place } from './geodesy';
import { addPart, partsOf, removePart, roomFor, shapes, type Kind } from './parts';
import { walkedSpread } from './walk';

/** What the reader of a file makes of one feature; an empty kind leaves it out. */
export type Choice = { kind: Kind | ''; name: string; height: number | undefined };

const kindOf: Record<FieldPart, Kind | ''> = {
  FIELD_PART_UNSPECIFIED: '',
  FIELD_PART_FLYING_AREA: 'flyingArea',
  FIELD_PART_STRIP: 'strips',
  FIELD_PART_LAUNCH_SPOT: 'launchSpots',
  FIELD_PART_OBSTACLE: 'obstacles',
  FIELD_PART_KEEP_OUT: 'keepOuts',
  FIELD_PART_PEOPLE_LINE: 'peopleLines',
  FIELD_PART_LANDING_AREA: 'landingAreas',
  FIELD_PART_PITS: 'pits',
  FIELD_PART_PILOT_POSITION: 'pilotPosition',
  FIELD_PART_ROAD: 'roads',
  FIELD_PART_PARKING: 'parking',
};

/** What the server takes a feature for. */
export function suggested(feature: SurveyFeature): Choice {
  return {
    kind: kindOf[feature.part ?? 'FIELD_PART_UNSPECIFIED'],
    name: feature.name ?? '',
    height: feature.heightMeters,
  };
}

export const placesOf = (feature: SurveyFeature): Metres[] =>
  (feature.points ?? []).map((p) => ({ x: p.xMeters ?? 0, y: p.yMeters ?? 0, z: p.zMeters }));

/** True when a feature has the places that a part of the kind needs. */
export function fits(feature: SurveyFeature, kind: Kind): boolean {
  return (feature.points?.length ?? 0) >= shapes[kind].least;
}

const half = (a: Metres, b: Metres): Metres => ({ x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 });
const far = (a: Metres, b: Metres): number => Math.hypot(b.x - a.x, b.y - a.y);

/** Thresholds and width of a strip drawn as an outline of four corners: the middles of its two shorter sides. */
export function stripOf(corners: Metres[]): { ends: Metres[]; width: number } | undefined {
  const [a, b, c, d] = corners;
  if (corners.length !== 4 || !a || !b || !c || !d) return undefined;
  const across = far(a, b) + far(c, d) < far(b, c) + far(d, a);
  return across
    ? { ends: [half(a, b), half(c, d)], width: (far(a, b) + far(c, d)) / 2 }
    : { ends: [half(b, c), half(d, a)], width: (far(b, c) + far(d, a)) / 2 };
}

/** The places of a feature as the corners of a part of a kind. */
function cornersFor(feature: SurveyFeature, kind: Kind): Metres[] {
  const at = placesOf(feature);
  const { fixed } = shapes[kind];
  if (!fixed) return at;
  const strip = kind === 'strips' && feature.closed ? stripOf(at) : undefined;
  if (strip) return strip.ends;
  const [first, last] = [at[0], at.at(-1)];
  return first && last ? [first, last].slice(0, fixed.length) : [];
}

/** Sets what only some kinds have: an obstacle's height and shape, a strip's width. */
function detailed(
  field: FieldDescription,
  path: string,
  kind: Kind,
  feature: SurveyFeature,
  height: number | undefined,
): FieldDescription {
  if (kind === 'strips') {
    const width = feature.closed ? stripOf(placesOf(feature))?.width : undefined;
    if (width === undefined) return field;
    return setIn(field, `${path}.widthMeters`, {
      value: Math.round(width * 10) / 10,
      basis: 'BASIS_ESTIMATED',
    });
  }
  if (kind !== 'obstacles') return field;
  let out = feature.closed ? setIn(field, `${path}.closed`, true) : field;
  if (feature.obstacleKind) out = setIn(out, `${path}.kind`, feature.obstacleKind);
  // How a file's height came about is unknown; whoever knows better says so in the form.
  if (height !== undefined)
    out = setIn(out, `${path}.heightMeters`, { value: height, basis: 'BASIS_ESTIMATED' });
  const spread = feature.positionSpreadMeters;
  return spread === undefined ? out : setIn(out, `${path}.positionSpreadMeters`, spread);
}

/** One feature more in the field; a single part takes the place of the one before. Unchanged where it does not fit. */
function withFeature(
  field: FieldDescription,
  feature: SurveyFeature,
  choice: Choice,
  stem: string,
): FieldDescription {
  const { kind } = choice;
  if (kind === '' || !fits(feature, kind)) return field;
  const former = partsOf(field).find((p) => p.path === kind);
  const before = former ? removePart(field, former) : field;
  if (!roomFor(before, kind)) return field;
  const added = addPart(before, kind, choice.name.trim() || stem, cornersFor(feature, kind));
  return detailed(added.field, added.path, kind, feature, choice.height);
}

/** The field with everything that was chosen from a file. A field without a datum takes the file's. */
export function merged(
  field: FieldDescription,
  features: SurveyFeature[],
  choices: Choice[],
  datum: Place & { height?: number | undefined },
  stems: Record<Kind, string>,
): FieldDescription {
  const placed = datumOf(field)
    ? field
    : { ...field, datumLatitudeDegrees: datum.latitude, datumLongitudeDegrees: datum.longitude };
  const start =
    datum.height === undefined || placed.elevationMeters
      ? placed
      : { ...placed, elevationMeters: { value: datum.height, basis: 'BASIS_ESTIMATED' as const } };
  return features.reduce((so, feature, i) => {
    const choice = choices[i];
    return choice && choice.kind !== '' ? withFeature(so, feature, choice, stems[choice.kind]) : so;
  }, start);
}

/** The field with a walked part, and how it was surveyed. A field without a datum takes the first corner. */
export function withWalked(
  field: FieldDescription,
  walked: Walked,
  stem: string,
  today = new Date(),
): FieldDescription {
  const first = walked.corners[0];
  if (!first) return field;
  const datum = datumOf(field) ?? { latitude: degrees(first.latitude), longitude: degrees(first.longitude) };
  const points = walked.corners.map((c) => {
    const at = toMetres(datum, c);
    return { xMeters: millimetres(at.x), yMeters: millimetres(at.y) };
  });
  const feature = { points, closed: shapes[walked.kind].closed };
  const choice = { kind: walked.kind, name: '', height: undefined };
  const out = merged(field, [feature], [choice], datum, { [walked.kind]: stem } as Record<Kind, string>);
  if (out === field) return field;
  const spread = walkedSpread(walked.corners);
  return {
    ...out,
    survey: {
      ...out.survey,
      method: 'SURVEY_METHOD_WALKED',
      date: today.toISOString().slice(0, 10),
      ...(spread === undefined ? {} : { positionSpreadMeters: spread }),
    },
  };
}
