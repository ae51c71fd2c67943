import type { FieldDescription, ReportPath } from '../app/wire';
import { pathSpots, type Spot } from './planGeometry';
import { heightAt, postsUnder, type Post } from './profileGeometry';

const size = (a: Spot, b: Spot): number => Math.hypot(b.x - a.x, b.y - a.y);

/** Length of a line, metres. */
const lengthOf = (spots: Spot[]): number =>
  spots.slice(1).reduce((sum, b, i) => sum + size(spots[i] as Spot, b), 0);

/** The place at a distance along a line; its last spot beyond the end. */
export function along(spots: Spot[], distance: number): Spot | undefined {
  let left = distance;
  for (const [i, b] of spots.slice(1).entries()) {
    const a = spots[i] as Spot;
    const length = size(a, b);
    if (left <= length)
      return { x: a.x + ((b.x - a.x) * left) / (length || 1), y: a.y + ((b.y - a.y) * left) / (length || 1) };
    left -= length;
  }
  return spots.at(-1);
}

/** Height of the threshold nearest to a place above the datum; zero where the field has no strip. */
function thresholdHeight(field: FieldDescription, place: Spot): number {
  const ends = (field.strips ?? []).flatMap((s) => [s.start ?? {}, s.end ?? {}]);
  const away = (p: (typeof ends)[number]): number => size(place, { x: p.xMeters ?? 0, y: p.yMeters ?? 0 });
  return [...ends].sort((a, b) => away(a) - away(b))[0]?.zMeters ?? 0;
}

/**
 * Every obstacle under the approach, with distances from the threshold, negative before it. The track over the field and the
 * profile end at the same place, where the model has come to rest.
 */
export function landingPosts(field: FieldDescription, plan: ReportPath | undefined, profile: Spot[]): Post[] {
  const track = pathSpots(plan);
  const end = profile.at(-1);
  if (track.length < 2 || !end) return [];
  const before = end.x - lengthOf(track);
  const threshold = along(track, -before) ?? { x: 0, y: 0 };
  const shifted = profile.map((p) => ({ x: p.x - before, y: p.y }));
  return postsUnder(field, track, shifted, thresholdHeight(field, threshold))
    .map((p) => ({ ...p, distance: p.distance + before }))
    .filter((p) => heightAt(profile, p.distance) !== undefined);
}
