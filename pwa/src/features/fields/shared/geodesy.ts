/** WGS-84 and the plane that touches it at a field's datum; as exact as the server's own, so that coordinates are the same on both. */

export type Place = { latitude: number; longitude: number };
/** Metres east and north of the datum, with the ground's height above it where that is known. */
export type Metres = { x: number; y: number; z?: number | undefined };

const radius = 6378137;
const flattening = 1 / 298.257223563;
const e2 = flattening * (2 - flattening);
const rad = Math.PI / 180;

type Centred = [x: number, y: number, z: number];

/** Earth-centred place: X = (N+h) cos lat cos lon, Y = (N+h) cos lat sin lon, Z = (N(1-e2)+h) sin lat, with N = a / sqrt(1 - e2 sin2 lat). */
function centred(p: Place, height = 0): Centred {
  const [sin, cos] = [Math.sin(p.latitude * rad), Math.cos(p.latitude * rad)];
  const n = radius / Math.sqrt(1 - e2 * sin * sin);
  const out = (n + height) * cos;
  return [
    out * Math.cos(p.longitude * rad),
    out * Math.sin(p.longitude * rad),
    (n * (1 - e2) + height) * sin,
  ];
}

/** East, north and up of the datum as earth-centred unit vectors. */
function axes(datum: Place): [east: Centred, north: Centred, up: Centred] {
  const [sinLat, cosLat] = [Math.sin(datum.latitude * rad), Math.cos(datum.latitude * rad)];
  const [sinLon, cosLon] = [Math.sin(datum.longitude * rad), Math.cos(datum.longitude * rad)];
  return [
    [-sinLon, cosLon, 0],
    [-sinLat * cosLon, -sinLat * sinLon, cosLat],
    [cosLat * cosLon, cosLat * sinLon, sinLat],
  ];
}

const dot = (a: Centred, b: Centred): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];

/** Metres east and north of the datum. */
export function toMetres(datum: Place, place: Place): Metres {
  const [o, p] = [centred(datum), centred(place)];
  const away: Centred = [p[0] - o[0], p[1] - o[1], p[2] - o[2]];
  const [east, north] = axes(datum);
  return { x: dot(east, away), y: dot(north, away) };
}

/** Latitude and longitude of an earth-centred place near the ground, by fixed-point steps on the latitude. */
function placeOf([x, y, z]: Centred): Place {
  const out = Math.hypot(x, y);
  let lat = Math.atan2(z, out * (1 - e2));
  for (let i = 0; i < 8; i++) {
    const sin = Math.sin(lat);
    lat = Math.atan2(z + (e2 * radius * sin) / Math.sqrt(1 - e2 * sin * sin), out);
  }
  return { latitude: lat / rad, longitude: Math.atan2(y, x) / rad };
}

/** The place on the ellipsoid at some metres east and north of the datum; the height in which the plane leaves the ellipsoid is taken back. */
export function toPlace(datum: Place, at: Metres): Place {
  const o = centred(datum);
  const [east, north, up] = axes(datum);
  // The ellipsoid falls below the plane by d2/2R; what that leaves is below a millimetre for a field.
  const fall = (at.x * at.x + at.y * at.y) / (2 * radius);
  const spot = (h: number): Centred => [
    o[0] + east[0] * at.x + north[0] * at.y + up[0] * h,
    o[1] + east[1] * at.x + north[1] * at.y + up[1] * h,
    o[2] + east[2] * at.x + north[2] * at.y + up[2] * h,
  ];
  return placeOf(spot(-fall));
}

/** Degrees with seven decimals: a centimetre. */
export const degrees = (value: number): number => Math.round(value * 1e7) / 1e7;

/** Metres to the millimetre. */
export const millimetres = (value: number): number => Math.round(value * 1000) / 1000;
