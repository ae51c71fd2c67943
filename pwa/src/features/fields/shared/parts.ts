import { getIn, setIn } from '../../../app/paths';
import type { FieldDescription, Point } from '../../../app/wire';
import { millimetres, type Metres } from './geodesy';

/** Lists of a field's parts, and its two single parts. */
export const kinds = [
  'flyingArea',
  'strips',
  'launchSpots',
  'obstacles',
  'keepOuts',
  'landingAreas',
  'pilotPosition',
  'peopleLines',
  'pits',
  'parking',
  'roads',
] as const;
export type Kind = (typeof kinds)[number];

export type Corner = { path: string; point: Point };

/** One part of a field, whatever its kind: where it stands in the description, and its corners. */
export type Part = {
  kind: Kind;
  path: string;
  name: string;
  corners: Corner[];
  closed: boolean;
  /** Path of the list its corners stand in; absent where their number is fixed. */
  list?: string;
};

/** Shape of a kind: a fixed number of places, a line, or an outline. */
type Shape = { most: number; list?: string; fixed?: string[]; closed: boolean; least: number };

export const shapes: Record<Kind, Shape> = {
  flyingArea: { most: 1, list: 'corners', closed: true, least: 3 },
  strips: { most: 12, fixed: ['start', 'end'], closed: false, least: 2 },
  launchSpots: { most: 24, fixed: ['position'], closed: false, least: 1 },
  obstacles: { most: 200, list: 'points', closed: false, least: 1 },
  keepOuts: { most: 60, list: 'area.corners', closed: true, least: 3 },
  landingAreas: { most: 24, list: 'area.corners', closed: true, least: 3 },
  pilotPosition: { most: 1, fixed: [''], closed: false, least: 1 },
  peopleLines: { most: 12, list: 'points', closed: false, least: 2 },
  pits: { most: 12, list: 'area.corners', closed: true, least: 3 },
  parking: { most: 12, list: 'area.corners', closed: true, least: 3 },
  roads: { most: 40, list: 'points', closed: false, least: 2 },
};

const single = (kind: Kind): boolean => kind === 'flyingArea' || kind === 'pilotPosition';

const join = (...parts: string[]): string => parts.filter((p) => p !== '').join('.');

function cornersOf(field: FieldDescription, kind: Kind, path: string): Corner[] {
  const { list, fixed } = shapes[kind];
  if (fixed) {
    return fixed.flatMap((name) => {
      const at = join(path, name);
      const point = getIn(field, at) as Point | undefined;
      return point ? [{ path: at, point }] : [];
    });
  }
  const listPath = join(path, list ?? '');
  const points = (getIn(field, listPath) as Point[] | undefined) ?? [];
  return points.map((point, i) => ({ path: join(listPath, String(i)), point }));
}

function partAt(field: FieldDescription, kind: Kind, path: string): Part {
  const { list, closed } = shapes[kind];
  const value = getIn(field, path) as { name?: string; closed?: boolean } | undefined;
  return {
    kind,
    path,
    name: value?.name ?? '',
    corners: cornersOf(field, kind, path),
    closed: kind === 'obstacles' ? (value?.closed ?? false) : closed,
    ...(list ? { list: join(path, list) } : {}),
  };
}

/** Every part of a field in the order of the kinds. */
export function partsOf(field: FieldDescription): Part[] {
  return kinds.flatMap((kind) => {
    const value = field[kind];
    if (value === undefined) return [];
    if (single(kind)) return [partAt(field, kind, kind)];
    return (value as unknown[]).map((_, i) => partAt(field, kind, join(kind, String(i))));
  });
}

/** The part a path of the description leads into. */
export function partOf(parts: Part[], path: string): Part | undefined {
  return parts.find((p) => path === p.path || path.startsWith(`${p.path}.`));
}

const pointAt = (at: Metres): Point => ({
  xMeters: millimetres(at.x),
  yMeters: millimetres(at.y),
  ...(at.z === undefined ? {} : { zMeters: millimetres(at.z) }),
});

export const metresOf = (p: Point | undefined): Metres => ({ x: p?.xMeters ?? 0, y: p?.yMeters ?? 0 });

/** The field with a corner moved to a place; its ground height stays. */
export function moveCorner(field: FieldDescription, path: string, to: Metres): FieldDescription {
  return setIn(field, path, { ...(getIn(field, path) as Point | undefined), ...pointAt(to) });
}

/** Where a corner after another one goes: half way to the next, or as far on as the last one came. */
function nextPlace(part: Part, after: number): Metres {
  const at = (i: number): Metres => metresOf(part.corners[i]?.point);
  const here = at(after);
  const last = after === part.corners.length - 1;
  if (!last || part.closed) {
    const next = at((after + 1) % part.corners.length);
    return { x: (here.x + next.x) / 2, y: (here.y + next.y) / 2 };
  }
  if (after === 0) return { x: here.x + 20, y: here.y };
  const before = at(after - 1);
  return { x: 2 * here.x - before.x, y: 2 * here.y - before.y };
}

/** The field with a corner more, after the given one. */
export function addCorner(field: FieldDescription, part: Part, after: number): FieldDescription {
  if (part.list === undefined) return field;
  const points = part.corners.map((c) => c.point);
  points.splice(after + 1, 0, pointAt(nextPlace(part, after)));
  return setIn(field, part.list, points);
}

/** The field with a corner less. */
export function removeCorner(field: FieldDescription, part: Part, index: number): FieldDescription {
  if (part.list === undefined) return field;
  return setIn(
    field,
    part.list,
    part.corners.filter((_, i) => i !== index).map((c) => c.point),
  );
}

/** A name that no other part of the kind has. */
export function freeName(field: FieldDescription, kind: Kind, stem: string): string {
  const taken = partsOf(field)
    .filter((p) => p.kind === kind)
    .map((p) => p.name);
  if (!taken.includes(stem)) return stem;
  let n = 2;
  while (taken.includes(`${stem} ${String(n)}`)) n++;
  return `${stem} ${String(n)}`;
}

/** What a part of a kind looks like in the description, with its corners at the given places. */
export function newPart(kind: Kind, name: string, at: Metres[]): unknown {
  const points = at.map(pointAt);
  const { list, fixed } = shapes[kind];
  if (kind === 'pilotPosition') return points[0] ?? {};
  if (kind === 'flyingArea') return { corners: points };
  if (fixed) return { name, ...Object.fromEntries(fixed.map((f, i) => [f, points[i] ?? points[0] ?? {}])) };
  return setIn({ name }, list ?? '', points);
}

/** Whether another part of the kind may be added. */
export function roomFor(field: FieldDescription, kind: Kind): boolean {
  return partsOf(field).filter((p) => p.kind === kind).length < shapes[kind].most;
}

/** The field with a part more, and the new part's path. */
export function addPart(
  field: FieldDescription,
  kind: Kind,
  name: string,
  at: Metres[],
): { field: FieldDescription; path: string } {
  const part = newPart(kind, freeName(field, kind, name), at);
  if (single(kind)) return { field: { ...field, [kind]: part }, path: kind };
  const list = (field[kind] as unknown[] | undefined) ?? [];
  return { field: { ...field, [kind]: [...list, part] }, path: join(kind, String(list.length)) };
}

/** A new part of a size that can be seen, around a place. */
export function startCorners(kind: Kind, middle: Metres, size: number): Metres[] {
  const { closed, fixed } = shapes[kind];
  const { x, y } = middle;
  if (kind === 'obstacles' || fixed?.length === 1) return [middle];
  if (!closed) return [-1, 1].map((side) => ({ x: x + side * size, y }));
  return [
    [-1, -1],
    [1, -1],
    [1, 1],
    [-1, 1],
  ].map(([a = 0, b = 0]) => ({ x: x + a * size, y: y + b * size }));
}

/** The field without a part. */
export function removePart(field: FieldDescription, part: Part): FieldDescription {
  if (single(part.kind)) return setIn(field, part.kind, undefined);
  const at = Number(part.path.split('.')[1]);
  const rest = (field[part.kind] as unknown[]).filter((_, i) => i !== at);
  return setIn(field, part.kind, rest.length > 0 ? rest : undefined);
}

/** Length along a part's corners, closed when it is; in metres. */
export function lengthOf(part: Part): number {
  const at = part.corners.map((c) => metresOf(c.point));
  return at.reduce((sum, here, i) => {
    const next = at[i + 1] ?? (part.closed ? at[0] : undefined);
    return next ? sum + Math.hypot(next.x - here.x, next.y - here.y) : sum;
  }, 0);
}

/** Area of a closed part by the shoelace formula, in square metres. */
export function areaOf(part: Part): number {
  if (!part.closed) return 0;
  const at = part.corners.map((c) => metresOf(c.point));
  const twice = at.reduce((sum, here, i) => {
    const next = at[(i + 1) % at.length] ?? here;
    return sum + here.x * next.y - next.x * here.y;
  }, 0);
  return Math.abs(twice) / 2;
}

/** Direction from the first corner to the last, degrees true. */
export function headingOf(part: Part): number {
  const [a, b] = [metresOf(part.corners[0]?.point), metresOf(part.corners.at(-1)?.point)];
  return ((Math.atan2(b.x - a.x, b.y - a.y) * 180) / Math.PI + 360) % 360;
}
