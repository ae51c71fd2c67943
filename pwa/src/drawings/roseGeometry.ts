import type { FieldDescription, WindRange, WindWay } from '../app/wire';
import type { Spot } from './planGeometry';
import { niceStep } from './stripGeometry';

/** Greatest speed that holds from one direction, m/s; zero when none does. */
export const mostOf = (r: WindRange | undefined): number =>
  r?.holds === true ? (r.mostMetersPerSecond ?? 0) : 0;

/** Least speed that holds from one direction, m/s. */
export const leastOf = (r: WindRange | undefined): number => r?.leastMetersPerSecond ?? 0;

/** A direction of a strip, as a post at the rim. */
export type StripPost = { name: string; heading: number };

const turn = 360;
const wrap = (degrees: number): number => ((degrees % turn) + turn) % turn;

/** The greatest speed that any way holds in, and those of the day. */
export function topSpeed(ways: WindWay[], speeds: (number | undefined)[]): number {
  const ranges = ways.flatMap((w) => (w.ranges ?? []).map(mostOf));
  return Math.max(1, ...ranges, ...speeds.map((s) => s ?? 0));
}

/** Round speeds for the rings, the outermost at or beyond the top. */
export function rings(top: number, count: number): number[] {
  const step = niceStep(top, count);
  return Array.from({ length: Math.ceil(top / step - 1e-9) }, (_, i) =>
    Number(((i + 1) * step).toPrecision(12)),
  );
}

/** A place of the rose: speed outwards, direction clockwise from the top. */
export function polar(degrees: number, radius: number): Spot {
  const a = (degrees * Math.PI) / 180;
  return { x: radius * Math.sin(a), y: -radius * Math.cos(a) };
}

const text = (s: Spot): string => `${s.x.toFixed(1)} ${s.y.toFixed(1)}`;

/** A piece of a ring between two radii, `width` degrees wide around a direction; both radii in page units. */
export function wedge(from: number, width: number, inner: number, outer: number): string {
  const half = Math.min(width, turn - 0.01) / 2;
  const [a, b, c, d] = [
    polar(from - half, outer),
    polar(from + half, outer),
    polar(from + half, inner),
    polar(from - half, inner),
  ];
  const large = half > 90 ? 1 : 0;
  const back = inner > 0.05 ? `A${inner.toFixed(1)} ${inner.toFixed(1)} 0 ${String(large)} 0 ${text(d)}` : '';
  return `M${text(a)}A${outer.toFixed(1)} ${outer.toFixed(1)} 0 ${String(large)} 1 ${text(b)}L${text(c)}${back}Z`;
}

/** Width of the sector that one direction of the wind stands for, degrees. */
export function sectorWidth(way: WindWay | undefined): number {
  const n = way?.ranges?.length ?? 0;
  return n > 0 ? turn / n : 0;
}

/** The range whose direction lies nearest to another. */
export function nearestRange(way: WindWay | undefined, from: number): WindRange | undefined {
  const off = (r: WindRange): number => Math.abs(wrap((r.fromDegrees ?? 0) - from + 180) - 180);
  return (way?.ranges ?? []).reduce<WindRange | undefined>(
    (best, r) => (!best || off(r) < off(best) ? r : best),
    undefined,
  );
}

/** Whether a way holds in a wind, by the range nearest to its direction. */
export function holdsIn(way: WindWay | undefined, from: number, speed: number): boolean {
  const range = nearestRange(way, from);
  return range?.holds === true && speed >= leastOf(range) && speed <= mostOf(range);
}

/** The way that holds in most winds: by the area it covers on the rose. */
export function widestWay(ways: WindWay[]): WindWay | undefined {
  const covered = (w: WindWay): number =>
    (w.ranges ?? []).reduce((sum, r) => sum + (r.holds === true ? mostOf(r) ** 2 - leastOf(r) ** 2 : 0), 0) /
    Math.max(1, w.ranges?.length ?? 0);
  return ways.reduce<WindWay | undefined>(
    (best, w) => (!best || covered(w) > covered(best) ? w : best),
    undefined,
  );
}

/** What decides about a way: its strongest wind, the directions around it that stand at least half of that, and what holds from everywhere. */
export type Gist = { most: number; at: number; from: number; to: number; everywhere: number };

/** The gist of a way; undefined when nothing holds. */
export function gistOf(way: WindWay | undefined): Gist | undefined {
  const ranges = [...(way?.ranges ?? [])].sort((a, b) => (a.fromDegrees ?? 0) - (b.fromDegrees ?? 0));
  const peak = ranges.reduce((best, r, i) => (mostOf(r) > mostOf(ranges[best]) ? i : best), 0);
  const top = mostOf(ranges[peak]);
  if (!(top > 0)) return undefined;
  const at = (i: number): WindRange | undefined => ranges[(i + ranges.length) % ranges.length];
  const reach = (side: number): number => {
    let n = 0;
    while (n < ranges.length - 1 && mostOf(at(peak + side * (n + 1))) >= top / 2) n++;
    return at(peak + side * n)?.fromDegrees ?? 0;
  };
  const calm = ranges.every((r) => r.holds === true && leastOf(r) === 0);
  return {
    most: top,
    at: ranges[peak]?.fromDegrees ?? 0,
    from: reach(-1),
    to: reach(1),
    everywhere: calm ? Math.min(...ranges.map(mostOf)) : 0,
  };
}

/** Both directions of every strip; their names are the halves of the strip's own where it has two. */
export function stripPosts(field: FieldDescription | undefined): StripPost[] {
  return (field?.strips ?? []).flatMap((s) => {
    const [dx, dy] = [
      (s.end?.xMeters ?? 0) - (s.start?.xMeters ?? 0),
      (s.end?.yMeters ?? 0) - (s.start?.yMeters ?? 0),
    ];
    if (Math.hypot(dx, dy) === 0) return [];
    const heading = wrap((Math.atan2(dx, dy) * 180) / Math.PI);
    const [one, other] = (s.name ?? '').split('/');
    return [
      { name: one ?? '', heading },
      { name: other ?? one ?? '', heading: wrap(heading + 180) },
    ];
  });
}
