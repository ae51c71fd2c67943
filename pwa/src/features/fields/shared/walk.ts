import type { Place } from './geodesy';

/** One position of the phone with how far it may be off, in metres. */
export type Fix = Place & { accuracy: number };

/** Poorer fixes than this say too little to be averaged, in metres. */
export const poorest = 50;

/**
 * Mean of fixes taken at one spot, each weighted by 1 / accuracy2: p = sum(p_i / a_i2) / sum(1 / a_i2).
 * The accuracy is the best single one, since fixes of one minute share their error and do not average it away.
 * Longitudes are averaged about the first one, so that the 180th meridian needs no care. Undefined without a usable fix.
 */
export function averaged(fixes: Fix[]): Fix | undefined {
  const usable = fixes.filter((f) => Number.isFinite(f.accuracy) && f.accuracy <= poorest);
  const first = usable[0];
  if (!first) return undefined;
  const weight = (f: Fix): number => 1 / Math.max(f.accuracy, 0.01) ** 2;
  const total = usable.reduce((sum, f) => sum + weight(f), 0);
  const mean = (of: (f: Fix) => number): number =>
    usable.reduce((sum, f) => sum + of(f) * weight(f), 0) / total;
  const about = (f: Fix): number => ((f.longitude - first.longitude + 540) % 360) - 180;
  const longitude = first.longitude + mean(about);
  return {
    latitude: mean((f) => f.latitude),
    longitude: longitude > 180 ? longitude - 360 : longitude < -180 ? longitude + 360 : longitude,
    accuracy: Math.min(...usable.map((f) => f.accuracy)),
  };
}

/** Standard deviation to state for walked places: the phone's radius holds about two places in three. */
export function walkedSpread(corners: Fix[]): number | undefined {
  if (corners.length === 0) return undefined;
  const mean = corners.reduce((sum, c) => sum + c.accuracy ** 2, 0) / corners.length;
  return Math.round(Math.sqrt(mean) * 10) / 10;
}
