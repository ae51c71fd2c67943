import type { FieldDescription, NamedArea, Point, ReportPath } from '../app/wire';

/** A place on the page. */
export type Spot = { x: number; y: number };

/** How metres become page units: north is up. */
export type Scale = { left: number; top: number; perMeter: number; width: number; height: number };

const spot = (p: Point): Spot => ({ x: p.xMeters ?? 0, y: p.yMeters ?? 0 });

/** Landing areas, pits and parking. */
const areas = (field: FieldDescription): NamedArea[] => [
  ...(field.landingAreas ?? []),
  ...(field.pits ?? []),
  ...(field.parking ?? []),
];

/** A road may run far beyond the field; it is followed only as far as the flying area's own reach. */
function nearField(field: FieldDescription, p: Point): boolean {
  const corners = (field.flyingArea?.corners ?? []).map(spot);
  const reach = Math.max(300, ...corners.map((c) => Math.hypot(c.x, c.y)));
  return Math.hypot(p.xMeters ?? 0, p.yMeters ?? 0) <= reach;
}

/** Every point of the field that the plan must show. */
export function fieldSpots(field: FieldDescription): Spot[] {
  const points: Point[] = [
    ...(field.flyingArea?.corners ?? []),
    ...(field.strips ?? []).flatMap((s) => [s.start ?? {}, s.end ?? {}]),
    ...(field.launchSpots ?? []).map((s) => s.position ?? {}),
    ...(field.obstacles ?? []).flatMap((o) => o.points ?? []),
    ...(field.keepOuts ?? []).flatMap((k) => k.area?.corners ?? []),
    ...(field.peopleLines ?? []).flatMap((l) => l.points ?? []),
    ...areas(field).flatMap((a) => a.area?.corners ?? []),
    ...(field.roads ?? []).flatMap((r) => r.points ?? []).filter((p) => nearField(field, p)),
    ...(field.pilotPosition ? [field.pilotPosition] : []),
  ];
  return points.map(spot);
}

/** Points of the field's middle, where people, cars and models are close together: what the close plan must show. */
export function closeSpots(field: FieldDescription): Spot[] {
  const grounds = [...(field.pits ?? []), ...(field.parking ?? [])];
  const points: Point[] = [
    ...(field.strips ?? []).flatMap((s) => [s.start ?? {}, s.end ?? {}]),
    ...(field.launchSpots ?? []).map((s) => s.position ?? {}),
    ...(field.peopleLines ?? []).flatMap((l) => l.points ?? []),
    ...grounds.flatMap((a) => a.area?.corners ?? []),
    ...(field.pilotPosition ? [field.pilotPosition] : []),
  ];
  return grown(points.map(spot));
}

/** Spots with the corners of a box that is larger than theirs: what stands close by belongs to the picture. */
function grown(spots: Spot[]): Spot[] {
  if (spots.length < 2) return spots;
  const [xs, ys] = [spots.map((s) => s.x), spots.map((s) => s.y)];
  const [left, right, low, high] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  const by = Math.max(60, Math.max(right - left, high - low) * 0.15);
  return [...spots, { x: left - by, y: low - by }, { x: right + by, y: high + by }];
}

/** True when a page spot lies within the drawing. */
export function inFrame(s: Spot, scale: Scale): boolean {
  return s.x >= 0 && s.x <= scale.width && s.y >= 0 && s.y <= scale.height;
}

/** Points of a computed path, in metres. */
export function pathSpots(path: ReportPath | undefined): Spot[] {
  return (path?.points ?? []).map((p) => ({ x: p.xMeters ?? 0, y: p.yMeters ?? 0 }));
}

/** Fits all spots into a width, with a margin; undefined when there is nothing to fit. */
export function fitScale(spots: Spot[], width: number, tallest: number): Scale | undefined {
  if (spots.length === 0) return undefined;
  const xs = spots.map((s) => s.x);
  const ys = spots.map((s) => s.y);
  const [left, right, low, high] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  const pad = Math.max(right - left, high - low, 1) * 0.05;
  const [wide, tall] = [right - left + 2 * pad, high - low + 2 * pad];
  const perMeter = Math.min(width / wide, tallest / tall);
  const spare = (width / perMeter - wide) / 2;
  return { left: left - pad - spare, top: high + pad, perMeter, width, height: tall * perMeter };
}

/** The scale nearer by a factor, with a place in its middle. */
export function nearer(scale: Scale, factor: number, middleOf: Spot): Scale {
  const perMeter = scale.perMeter * factor;
  return {
    ...scale,
    perMeter,
    left: middleOf.x - scale.width / 2 / perMeter,
    top: middleOf.y + scale.height / 2 / perMeter,
  };
}

/** Page units to metres. */
export function toField(p: Spot, scale: Scale): Spot {
  return { x: p.x / scale.perMeter + scale.left, y: scale.top - p.y / scale.perMeter };
}

/** Metres to page units. */
export function toPage(s: Spot, scale: Scale): Spot {
  return { x: (s.x - scale.left) * scale.perMeter, y: (scale.top - s.y) * scale.perMeter };
}

const round = (n: number): string => String(Math.round(n * 10) / 10);

/** SVG path through page spots. */
export function line(spots: Spot[], closed = false): string {
  if (spots.length === 0) return '';
  return 'M' + spots.map((s) => `${round(s.x)} ${round(s.y)}`).join('L') + (closed ? 'Z' : '');
}

/** Unit normal to a line at one of its points, by its neighbours. */
function normalAt(spots: Spot[], i: number): Spot {
  const before = spots[Math.max(0, i - 1)] ?? { x: 0, y: 0 };
  const after = spots[Math.min(spots.length - 1, i + 1)] ?? { x: 0, y: 0 };
  const size = Math.hypot(after.x - before.x, after.y - before.y) || 1;
  return { x: -(after.y - before.y) / size, y: (after.x - before.x) / size };
}

/** Outline of a ribbon along a line, as wide on both sides as the half widths say. */
export function ribbon(spots: Spot[], half: number[]): Spot[] {
  const side = (sign: number): Spot[] =>
    spots.map((s, i) => {
      const n = normalAt(spots, i);
      const h = sign * (half[i] ?? 0);
      return { x: s.x + n.x * h, y: s.y + n.y * h };
    });
  return [...side(1), ...side(-1).reverse()];
}

/** Four corners of a strip from its thresholds and width. */
export function stripCorners(start: Spot, end: Spot, width: number): Spot[] {
  return ribbon([start, end], [width / 2, width / 2]);
}

/** Middle of some spots, for a number. */
export function middle(spots: Spot[]): Spot {
  const n = spots.length || 1;
  return { x: spots.reduce((t, s) => t + s.x, 0) / n, y: spots.reduce((t, s) => t + s.y, 0) / n };
}

/** The spot farthest from a place: the end of a line where a number hides least. */
export function farthest(spots: Spot[], place: Spot): Spot {
  const away = (s: Spot): number => Math.hypot(s.x - place.x, s.y - place.y);
  return spots.reduce((best, s) => (away(s) > away(best) ? s : best), spots[0] ?? place);
}

/** Unit vector on the page towards which wind from a direction (degrees true) blows. */
export function windVector(fromDegrees: number): Spot {
  const a = (fromDegrees * Math.PI) / 180;
  return { x: -Math.sin(a), y: Math.cos(a) };
}

/** Distance of a place from the line through some spots, closed or not; inside an outline it counts from its sides. */
export function distanceTo(spots: Spot[], closed: boolean, p: Spot): number {
  const sides = spots.map((a, i) => ({ a, b: spots[i + 1] ?? (closed ? (spots[0] ?? a) : a) }));
  return Math.min(...sides.map(({ a, b }) => toSide(a, b, p)));
}

/** Distance of a place from the side between two spots. */
function toSide(a: Spot, b: Spot, p: Spot): number {
  const [x, y] = [b.x - a.x, b.y - a.y];
  const t = ((p.x - a.x) * x + (p.y - a.y) * y) / (x * x + y * y || 1);
  const share = Math.min(1, Math.max(0, t));
  return Math.hypot(p.x - a.x - share * x, p.y - a.y - share * y);
}

/** Round length of about `pixels` for the scale bar, in metres. */
export function barLength(perMeter: number, pixels: number): number {
  const raw = pixels / perMeter;
  const power = 10 ** Math.floor(Math.log10(raw));
  const lead = raw / power;
  return (lead >= 5 ? 5 : lead >= 2 ? 2 : 1) * power;
}

/** Moves numbers apart so that none covers another or a place that is taken; the order is kept. */
export function spread(spots: Spot[], apart: number, taken: Spot[] = []): Spot[] {
  const placed: Spot[] = [];
  for (const wanted of spots) placed.push(freeSpot(wanted, [...taken, ...placed], apart));
  return placed;
}

/** Nearest of a few places around the wanted one that is far enough from those taken. */
function freeSpot(wanted: Spot, taken: Spot[], apart: number): Spot {
  const clear = (s: Spot): boolean => taken.every((t) => Math.hypot(t.x - s.x, t.y - s.y) >= apart);
  for (let ring = 0; ring < 6; ring++)
    for (let turn = 0; turn < 8; turn++) {
      const a = (turn * Math.PI) / 4;
      const s = {
        x: wanted.x + Math.cos(a) * ring * apart * 0.6,
        y: wanted.y + Math.sin(a) * ring * apart * 0.6,
      };
      if (clear(s)) return s;
    }
  return wanted;
}
