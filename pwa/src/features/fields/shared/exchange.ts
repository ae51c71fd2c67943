import { getIn } from '../../../app/paths';
import type { FieldDescription, Quantity } from '../../../app/wire';
import { degrees, toPlace, type Place } from './geodesy';
import { metresOf, partsOf, type Kind, type Part } from './parts';

/** The datum of a field, when it has one. */
export function datumOf(field: FieldDescription): Place | undefined {
  const { datumLatitudeDegrees: latitude, datumLongitudeDegrees: longitude } = field;
  return latitude === undefined || longitude === undefined ? undefined : { latitude, longitude };
}

/** Words by which a survey file says what a feature is; an obstacle says its own kind. */
const kindWords: Record<Exclude<Kind, 'obstacles'>, string> = {
  flyingArea: 'flying-area',
  strips: 'strip',
  launchSpots: 'launch-spot',
  keepOuts: 'keep-out',
  landingAreas: 'landing-area',
  pilotPosition: 'pilot',
  peopleLines: 'people-line',
  pits: 'pits',
  parking: 'parking',
  roads: 'road',
};

type Shape = 'spot' | 'line' | 'area';
const shapeOf = (part: Part): Shape => (part.closed ? 'area' : part.corners.length > 1 ? 'line' : 'spot');

/** Shapes in which a survey file takes an obstacle's kind; in another shape it is written without one. */
const obstacleShapes: Record<string, Shape[]> = {
  hedge: ['line', 'area'],
  wall: ['line', 'area'],
  tree: ['spot', 'line', 'area'],
  building: ['spot', 'area'],
  wire: ['line'],
  bank: ['line', 'area'],
  mast: ['spot'],
  fence: ['line', 'area'],
};

/** What a survey file calls a part; undefined for an obstacle of no kind. */
function kindOf(field: FieldDescription, part: Part): string | undefined {
  if (part.kind !== 'obstacles') return kindWords[part.kind];
  const kind = getIn(field, `${part.path}.kind`) as string | undefined;
  const word = kind?.replace('OBSTACLE_KIND_', '').toLowerCase() ?? '';
  return obstacleShapes[word]?.includes(shapeOf(part)) ? word : undefined;
}

const placesOf = (part: Part, datum: Place): Place[] =>
  part.corners.map((c) => {
    const p = toPlace(datum, metresOf(c.point));
    return { latitude: degrees(p.latitude), longitude: degrees(p.longitude) };
  });

const heightOf = (field: FieldDescription, part: Part): number | undefined =>
  (getIn(field, `${part.path}.heightMeters`) as Quantity | undefined)?.value;

type Geometry = { type: 'Point' | 'LineString' | 'Polygon'; coordinates: unknown };

/** RFC 7946: longitude before latitude, outlines closed and counter-clockwise. */
function geometry(part: Part, places: Place[]): Geometry {
  const at = places.map((p) => [p.longitude, p.latitude]);
  if (part.closed) {
    const twice = places.reduce((sum, here, i) => {
      const next = places[(i + 1) % places.length] ?? here;
      return sum + here.longitude * next.latitude - next.longitude * here.latitude;
    }, 0);
    const ring = twice < 0 ? [at[0], ...at.slice(1).reverse()] : at;
    return { type: 'Polygon', coordinates: [[...ring, ring[0]]] };
  }
  return at.length === 1 ? { type: 'Point', coordinates: at[0] } : { type: 'LineString', coordinates: at };
}

/** The field as a GeoJSON feature collection (RFC 7946); undefined without a datum. */
export function geoJson(field: FieldDescription): object | undefined {
  const datum = datumOf(field);
  if (!datum) return undefined;
  const features = partsOf(field)
    .filter((part) => part.corners.length > 0)
    .map((part) => {
      const height = heightOf(field, part);
      const kind = kindOf(field, part);
      return {
        type: 'Feature',
        properties: {
          ...(kind ? { kind } : {}),
          ...(part.name ? { name: part.name } : {}),
          ...(height === undefined ? {} : { height }),
        },
        geometry: geometry(part, placesOf(part, datum)),
      };
    });
  return { type: 'FeatureCollection', features };
}

const escaped = (text: string): string =>
  text.replace(/[&<>"]/g, (c) => ({ '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' })[c] ?? c);

const gpxPoint = (tag: string, p: Place, inside: string): string =>
  `<${tag} lat="${String(p.latitude)}" lon="${String(p.longitude)}">${inside}</${tag}>`;

/** The field as GPX 1.1: a waypoint for each single place, a route for each line and each outline, closed; undefined without a datum. */
export function gpx(field: FieldDescription): string | undefined {
  const datum = datumOf(field);
  if (!datum) return undefined;
  const parts = partsOf(field).filter((p) => p.corners.length > 0);
  const label = (part: Part): string => {
    const [kind, height] = [kindOf(field, part), heightOf(field, part)];
    return [
      part.name ? `<name>${escaped(part.name)}</name>` : '',
      kind ? `<type>${kind}</type>` : '',
      height === undefined ? '' : `<extensions><p:height>${String(height)}</p:height></extensions>`,
    ].join('');
  };
  const [points, lines] = [
    parts.filter((p) => p.corners.length === 1),
    parts.filter((p) => p.corners.length > 1),
  ];
  const waypoints = points.map((part) => gpxPoint('wpt', placesOf(part, datum)[0] as Place, label(part)));
  const routes = lines.map((part) => {
    const places = placesOf(part, datum);
    const closed = part.closed ? [...places, places[0] as Place] : places;
    return `<rte>${label(part)}${closed.map((p) => gpxPoint('rtept', p, '')).join('')}</rte>`;
  });
  return [
    '<?xml version="1.0" encoding="UTF-8"?>',
    '<gpx version="1.1" creator="pitgate" xmlns="http://www.topografix.com/GPX/1/1" xmlns:p="urn:pitgate:survey:1">',
    `<metadata><name>${escaped(field.displayName ?? '')}</name></metadata>`,
    ...waypoints,
    ...routes,
    '</gpx>',
    '',
  ].join('\n');
}
