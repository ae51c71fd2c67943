import type { FieldDescription, LaunchPlan, Obstacle, ReportPath } from '../app/wire';
import type { Spot } from './planGeometry';

/** An obstacle as the launch meets it. */
export type Post = {
  name: string;
  /** Distance along the launch, metres. */
  distance: number;
  /** Top above the launch place, metres. */
  top: number;
  /** One standard deviation of the top, metres. */
  spread: number;
  /** Middle of the path over it less its top, metres; negative when below. */
  clearance: number;
};

/** Where two segments cross, as shares along both, if they do. */
function crossing(a: Spot, b: Spot, c: Spot, d: Spot): { along: number; across: number } | undefined {
  const [rx, ry, sx, sy] = [b.x - a.x, b.y - a.y, d.x - c.x, d.y - c.y];
  const det = rx * sy - ry * sx;
  if (Math.abs(det) < 1e-9) return undefined;
  const along = ((c.x - a.x) * sy - (c.y - a.y) * sx) / det;
  const across = ((c.x - a.x) * ry - (c.y - a.y) * rx) / det;
  return along >= 0 && along <= 1 && across >= 0 && across <= 1 ? { along, across } : undefined;
}

/** Share along a segment nearest to a spot, and how far off it is. */
function nearest(a: Spot, b: Spot, p: Spot): { along: number; off: number } {
  const [rx, ry] = [b.x - a.x, b.y - a.y];
  const size = rx * rx + ry * ry || 1;
  const along = Math.min(1, Math.max(0, ((p.x - a.x) * rx + (p.y - a.y) * ry) / size));
  return { along, off: Math.hypot(a.x + along * rx - p.x, a.y + along * ry - p.y) };
}

/** The edges of an obstacle; one point is an edge of no length. */
function edges(obstacle: Obstacle): [Spot, Spot][] {
  const spots = (obstacle.points ?? []).map((p) => ({ x: p.xMeters ?? 0, y: p.yMeters ?? 0 }));
  const ring = obstacle.closed && spots.length > 2 ? [...spots, spots[0] as Spot] : spots;
  const first = ring[0];
  if (first && ring.length === 1) return [[first, first]];
  return ring.slice(1).map((end, i) => [ring[i] as Spot, end]);
}

/** First distance along a track at which it crosses an obstacle, or passes a single point within `reach` metres. */
export function meets(track: Spot[], obstacle: Obstacle, reach: number): number | undefined {
  let gone = 0;
  for (const [i, b] of track.slice(1).entries()) {
    const a = track[i] as Spot;
    const length = Math.hypot(b.x - a.x, b.y - a.y);
    const shares = edges(obstacle).flatMap(([c, d]) => meetEdge(a, b, c, d, reach));
    if (shares.length > 0) return gone + Math.min(...shares) * length;
    gone += length;
  }
  return undefined;
}

function meetEdge(a: Spot, b: Spot, c: Spot, d: Spot, reach: number): number[] {
  if (c !== d) {
    const hit = crossing(a, b, c, d);
    return hit ? [hit.along] : [];
  }
  const near = nearest(a, b, c);
  return near.off <= reach ? [near.along] : [];
}

/** Height of a line of (distance, height) at a distance, straight between its points. */
export function heightAt(points: Spot[], distance: number): number | undefined {
  for (const [i, b] of points.slice(1).entries()) {
    const a = points[i] as Spot;
    if (distance < Math.min(a.x, b.x) || distance > Math.max(a.x, b.x)) continue;
    const share = b.x === a.x ? 0 : (distance - a.x) / (b.x - a.x);
    return a.y + share * (b.y - a.y);
  }
  return undefined;
}

/** A path seen from the side: distance along it, and height above the launch place. */
export function sideView(path: ReportPath | undefined): Spot[] {
  return (path?.points ?? []).map((p) => ({ x: p.xMeters ?? 0, y: p.zMeters ?? p.yMeters ?? 0 }));
}

/** Outline of the 5 to 95 % band around a path seen from the side, no higher than the ceiling. */
export function bandOf(path: ReportPath | undefined, ceiling: number | undefined): Spot[] {
  const half = (path?.points ?? []).map((p) => p.halfBandMeters ?? 0);
  const top = ceiling ?? Infinity;
  const edge = (sign: number): Spot[] =>
    sideView(path).map((p, i) => ({ x: p.x, y: Math.min(p.y + sign * (half[i] ?? 0), top) }));
  return [...edge(1), ...edge(-1).reverse()];
}

/** Ground height of the launch place above the datum, metres. */
export function groundAt(field: FieldDescription, plan: LaunchPlan): number {
  const strip = field.strips?.find((s) => s.name === plan.strip);
  const spot = field.launchSpots?.find((s) => s.name === plan.launchSpot);
  const place = spot?.position ?? (plan.stripReversed ? strip?.end : strip?.start);
  return place?.zMeters ?? 0;
}

/** Goes on straight from the last two points for a distance, as the climb is judged beyond its end. */
export function prolong(points: Spot[], distance: number): Spot[] {
  const [a, b] = points.slice(-2);
  if (!a || !b || distance <= 0) return points;
  const length = Math.hypot(b.x - a.x, b.y - a.y) || 1;
  const share = distance / length;
  return [...points, { x: b.x + (b.x - a.x) * share, y: b.y + (b.y - a.y) * share }];
}

/** The same path no higher than a ceiling: the height at which the circuit is planned. Bends where it meets it. */
export function levelOff(profile: Spot[], ceiling: number | undefined): Spot[] {
  if (ceiling === undefined) return profile;
  const capped: Spot[] = [];
  for (const [i, p] of profile.entries()) {
    const a = profile[i - 1];
    if (a && a.y < ceiling && p.y > ceiling) {
      capped.push({ x: a.x + ((ceiling - a.y) / (p.y - a.y)) * (p.x - a.x), y: ceiling });
    }
    capped.push({ x: p.x, y: Math.min(p.y, ceiling) });
  }
  return capped;
}

/** The computed launch track over the field; empty when none was computed. */
export function launchTrack(plan: ReportPath | undefined): Spot[] {
  return (plan?.points ?? []).map((p) => ({ x: p.xMeters ?? 0, y: p.yMeters ?? 0 }));
}

/** Every obstacle under the launch, nearest first, with the clearance of the path's middle over its top. */
export function postsUnder(field: FieldDescription, track: Spot[], profile: Spot[], ground: number): Post[] {
  const posts: Post[] = [];
  for (const obstacle of field.obstacles ?? []) {
    const reach = 10 + 2 * (obstacle.positionSpreadMeters ?? 0);
    const distance = meets(track, obstacle, reach);
    const height = distance === undefined ? undefined : heightAt(profile, distance);
    if (distance === undefined || height === undefined) continue;
    const top = (obstacle.points?.[0]?.zMeters ?? 0) - ground + (obstacle.heightMeters?.value ?? 0);
    posts.push({
      name: obstacle.name ?? '',
      distance,
      top,
      spread: obstacle.heightMeters?.spread ?? 0,
      clearance: height - top,
    });
  }
  return posts.sort((a, b) => a.distance - b.distance);
}

/** The post with the least clearance. */
export function worstPost(posts: Post[]): Post | undefined {
  return posts.reduce<Post | undefined>((w, p) => (!w || p.clearance < w.clearance ? p : w), undefined);
}

/** Middle of a label as near to `wanted` as keeps all of it between two edges. */
export function labelMiddle(wanted: number, length: number, from: number, to: number): number {
  const half = Math.min(length, to - from) / 2;
  return Math.min(to - half, Math.max(from + half, wanted));
}

/** A sentence with its first letter large, as it stands alone. */
export function sentenceCase(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
