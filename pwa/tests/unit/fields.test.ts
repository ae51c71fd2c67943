import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { FieldDescription, SurveyFeature } from '../../src/app/wire';
import {
  distanceTo,
  fitScale,
  inFrame,
  nearer,
  spread,
  toField,
  toPage,
} from '../../src/drawings/planGeometry';
import { sizeOf } from '../../src/features/fields/shared/describe';
import { datumOf, geoJson, gpx } from '../../src/features/fields/shared/exchange';
import { toMetres, toPlace } from '../../src/features/fields/shared/geodesy';
import { fits, merged, stripOf, withWalked } from '../../src/features/fields/shared/merge';
import {
  addCorner,
  addPart,
  areaOf,
  freeName,
  headingOf,
  kinds,
  lengthOf,
  moveCorner,
  partOf,
  partsOf,
  removeCorner,
  removePart,
  roomFor,
  startCorners,
  type Kind,
  type Part,
} from '../../src/features/fields/shared/parts';
import { permissionState } from '../../src/features/fields/shared/terms';
import { averaged, walkedSpread } from '../../src/features/fields/shared/walk';
import { redo, startTrail, step, undo } from '../../src/features/models/shared/trail';

const file = (path: string): string =>
  readFileSync(new URL(`../../../testdata/${path}`, import.meta.url), 'utf8');
const field = (name: string): FieldDescription => JSON.parse(file(`demo/${name}.json`)) as FieldDescription;
const longAcre = field('long_acre');
const quarryTop = field('quarry_top');
const units = { speed: 'm/s', length: 'm', mass: 'kg', force: 'N' } as const;
const stems = Object.fromEntries(kinds.map((k) => [k, k])) as Record<Kind, string>;

function only(description: FieldDescription, kind: Kind, at = 0): Part {
  const part = partsOf(description).filter((p) => p.kind === kind)[at];
  if (!part) throw new Error(`no ${kind}`);
  return part;
}

/** Rows of published geodesic lines short enough for the plane of a field. */
const lines = file('published/geodesic_lines/values.csv')
  .trim()
  .split('\n')
  .slice(1)
  .map((line) => {
    const [id = '', inputs = '', expected = ''] = line.split(',');
    const named = Object.fromEntries(inputs.split(' ').map((pair) => pair.split('='))) as Record<
      string,
      string
    >;
    return { id, at: (name: string): number => Number(named[name]), expected: Number(expected) };
  });
const short = (end: string): typeof lines => lines.filter((l) => l.id.endsWith(end));
const near = [...short('/1300-m'), ...short('/180th-meridian')];

describe('geodesy', () => {
  it('has published lines to be held against', () => {
    expect(near.length).toBeGreaterThanOrEqual(4);
    expect(short('/500-m').length).toBeGreaterThanOrEqual(2);
  });

  it.each(near.map((l) => [l.id, l] as const))('agrees with the published line %s', (id, l) => {
    const at = toMetres(
      { latitude: l.at('from_latitude'), longitude: l.at('from_longitude') },
      { latitude: l.at('to_latitude'), longitude: l.at('to_longitude') },
    );
    // The plane's length is that of the geodesic less its cube over 24 R2, far below a millimetre here.
    if (id.startsWith('length')) expect(Math.abs(Math.hypot(at.x, at.y) - l.expected)).toBeLessThan(1e-3);
    else {
      const azimuth = (Math.atan2(at.x, at.y) * 180) / Math.PI;
      expect(Math.abs(azimuth - l.expected)).toBeLessThan(1e-5);
    }
  });

  it.each(
    short('/500-m')
      .filter((l) => !l.id.includes('azimuth'))
      .map((l) => [l.id, l] as const),
  )('finds the place of the published line %s', (id, l) => {
    const [azimuth, length] = [(l.at('azimuth') * Math.PI) / 180, l.at('distance')];
    const place = toPlace(
      { latitude: l.at('from_latitude'), longitude: l.at('from_longitude') },
      { x: length * Math.sin(azimuth), y: length * Math.cos(azimuth) },
    );
    const found = id.startsWith('along-latitude') ? place.latitude : place.longitude;
    expect(Math.abs(found - l.expected)).toBeLessThan(2e-9);
  });

  it('comes back to the millimetre within 2 km, everywhere on the earth', () => {
    for (const latitude of [-89, -45, 0, 54.2, 89])
      for (const longitude of [-179.9999, -1, 0, 179.9999])
        for (const [x, y] of [
          [2000, 0],
          [-1400, 1400],
          [3, -1999],
        ] as const) {
          const datum = { latitude, longitude };
          const back = toMetres(datum, toPlace(datum, { x, y }));
          expect(Math.hypot(back.x - x, back.y - y)).toBeLessThan(1e-3);
        }
  });
});

describe('parts', () => {
  it.each(['long_acre', 'quarry_top'])(
    'finds every part of %s: all that have a name, the area and the pilot',
    (name) => {
      const named = [...file(`demo/${name}.json`).matchAll(/"name": "([^"]+)"/g)].map((m) => m[1]);
      expect(named.length).toBeGreaterThanOrEqual(8);
      const found = partsOf(field(name)).map((p) => p.name || p.kind);
      expect([...found].sort()).toEqual([...named, 'flyingArea', 'pilotPosition'].sort());
    },
  );

  it('measures them: the strip is 285 m towards 060, the barn 22 by 16 m', () => {
    const strip = only(longAcre, 'strips');
    expect(lengthOf(strip)).toBeCloseTo(285, 1);
    expect(headingOf(strip)).toBeCloseTo(60, 1);
    expect(areaOf(only(longAcre, 'obstacles', 1))).toBeCloseTo(352, 0);
    expect(sizeOf(longAcre, strip, units)).toContain('060°');
  });

  it('a moved corner keeps its ground height and touches nothing else', () => {
    const before = { ...longAcre, pilotPosition: { xMeters: 1, yMeters: 2, zMeters: 3 } };
    const after = moveCorner(before, 'pilotPosition', { x: 4.00049, y: -5 });
    expect(after.pilotPosition).toEqual({ xMeters: 4, yMeters: -5, zMeters: 3 });
    expect(before.pilotPosition).toEqual({ xMeters: 1, yMeters: 2, zMeters: 3 });
    expect(after.obstacles).toBe(before.obstacles);
  });

  it('a corner is added half way to the next one, and beyond the end of a line', () => {
    const hedge = only(longAcre, 'obstacles');
    const between = only(addCorner(longAcre, hedge, 0), 'obstacles').corners;
    expect(between[1]?.point).toEqual({ xMeters: 134.74, yMeters: 158.625 });
    const beyond = only(addCorner(longAcre, hedge, 1), 'obstacles').corners;
    expect(beyond[2]?.point).toEqual({ xMeters: -75.26, yMeters: 522.36 });
    const area = only(longAcre, 'flyingArea');
    const wrapped = only(addCorner(longAcre, area, 3), 'flyingArea').corners[4]?.point;
    expect(wrapped?.xMeters).toBeCloseTo((-582.39 - 348.39) / 2, 2);
  });

  it('what is added can be removed again, for every kind', () => {
    for (const kind of kinds) {
      const bare = removeAll(longAcre, kind);
      expect(roomFor(bare, kind)).toBe(true);
      const { field: more, path } = addPart(bare, kind, 'new', startCorners(kind, { x: 0, y: 0 }, 30));
      const part = partOf(partsOf(more), `${path}.anything`);
      expect(part?.kind).toBe(kind);
      expect(part?.corners.length).toBeGreaterThan(0);
      if (part) expect(removePart(more, part)).toEqual(bare);
    }
  });

  it('a second flying area has no room, a second hedge gets a name of its own', () => {
    expect(roomFor(longAcre, 'flyingArea')).toBe(false);
    expect(freeName(longAcre, 'obstacles', 'barn')).toBe('barn 2');
    expect(freeName(longAcre, 'obstacles', 'oak')).toBe('oak');
  });

  it('a corner is taken out where it stood', () => {
    const barn = only(longAcre, 'obstacles', 1);
    const left = only(removeCorner(longAcre, barn, 1), 'obstacles', 1).corners;
    expect(left.map((c) => c.point)).toEqual(barn.corners.filter((_, i) => i !== 1).map((c) => c.point));
  });
});

function removeAll(description: FieldDescription, kind: Kind): FieldDescription {
  let out = description;
  for (;;) {
    const part = partsOf(out).find((p) => p.kind === kind);
    if (!part) return out;
    out = removePart(out, part);
  }
}

describe('files', () => {
  type Feature = {
    properties: Record<string, unknown>;
    geometry: { type: string; coordinates: number[][][] };
  };

  it('GeoJSON closes outlines, turns them counter-clockwise and puts longitude first', () => {
    const features = (geoJson(longAcre) as { features: Feature[] }).features;
    expect(features).toHaveLength(partsOf(longAcre).length);
    for (const { geometry } of features.filter((f) => f.geometry.type === 'Polygon')) {
      const ring = geometry.coordinates[0] ?? [];
      expect(ring.at(-1)).toEqual(ring[0]);
      const twice = ring.reduce((sum, here, i) => {
        const next = ring[(i + 1) % ring.length] ?? here;
        return sum + (here[0] ?? 0) * (next[1] ?? 0) - (next[0] ?? 0) * (here[1] ?? 0);
      }, 0);
      expect(twice).toBeGreaterThan(0);
      for (const [lon, lat] of ring) {
        expect(Math.abs((lon ?? 0) + 1.386)).toBeLessThan(0.02);
        expect(Math.abs((lat ?? 0) - 54.215)).toBeLessThan(0.02);
      }
    }
    const hedge = features.find((f) => f.properties['name'] === 'east hedge');
    expect(hedge?.properties).toEqual({ kind: 'hedge', name: 'east hedge', height: 2.4 });
  });

  it('the places of a file lead back to the same metres', () => {
    const datum = datumOf(longAcre);
    if (!datum) throw new Error('no datum');
    const features = (geoJson(longAcre) as { features: Feature[] }).features;
    const strip = features.find((f) => f.properties['kind'] === 'strip');
    const [lon = 0, lat = 0] = (strip?.geometry.coordinates as unknown as number[][])[0] ?? [];
    const at = toMetres(datum, { latitude: lat, longitude: lon });
    expect(Math.hypot(at.x + 123.41, at.y + 71.25)).toBeLessThan(0.02);
  });

  it('GPX holds every part once and no sign that breaks it', () => {
    const text = gpx({ ...quarryTop, displayName: 'A <b> & "c"' }) ?? '';
    expect(text).toContain('A &lt;b&gt; &amp; &quot;c&quot;');
    const spots = partsOf(quarryTop).filter((p) => p.corners.length === 1).length;
    expect(spots).toBeGreaterThanOrEqual(2);
    expect(text.match(/<wpt /g)).toHaveLength(spots);
    expect(text.match(/<rte>/g)).toHaveLength(partsOf(quarryTop).length - spots);
  });

  it('an obstacle in a shape that its kind cannot have is written without the kind', () => {
    const odd = {
      ...longAcre,
      obstacles: [{ name: 'post', kind: 'OBSTACLE_KIND_HEDGE' as const, points: [{ xMeters: 1 }] }],
    };
    const features = (geoJson(odd) as { features: Feature[] }).features;
    expect(features.find((f) => f.properties['name'] === 'post')?.properties).toEqual({ name: 'post' });
  });

  it('without a datum there is no file to make', () => {
    expect(geoJson({ ...longAcre, datumLatitudeDegrees: undefined as never })).toBeUndefined();
    expect(gpx({})).toBeUndefined();
  });
});

describe('what a file brings', () => {
  const point = (x: number, y: number): { xMeters: number; yMeters: number } => ({ xMeters: x, yMeters: y });
  const box: SurveyFeature = {
    closed: true,
    points: [point(0, -5), point(200, -5), point(200, 5), point(0, 5)],
  };
  const datum = { latitude: 54, longitude: -1 };

  it('an outline becomes a strip along its longer sides, with its width', () => {
    expect(stripOf(box.points?.map((p) => ({ x: p.xMeters ?? 0, y: p.yMeters ?? 0 })) ?? [])).toEqual({
      ends: [
        { x: 200, y: 0 },
        { x: 0, y: 0 },
      ],
      width: 10,
    });
    const out = merged({}, [box], [{ kind: 'strips', name: '09/27', height: undefined }], datum, stems);
    expect(out.strips?.[0]?.widthMeters).toEqual({ value: 10, basis: 'BASIS_ESTIMATED' });
    expect(out.datumLatitudeDegrees).toBe(54);
  });

  it('an obstacle brings kind, height and outline; a height from a file is an estimate', () => {
    const shed = { ...box, obstacleKind: 'OBSTACLE_KIND_BUILDING', positionSpreadMeters: 3 } as const;
    const out = merged(longAcre, [shed], [{ kind: 'obstacles', name: 'barn', height: 4 }], datum, stems);
    expect(out.obstacles?.at(-1)).toMatchObject({
      name: 'barn 2',
      kind: 'OBSTACLE_KIND_BUILDING',
      closed: true,
      heightMeters: { value: 4, basis: 'BASIS_ESTIMATED' },
      positionSpreadMeters: 3,
    });
    expect(out.datumLatitudeDegrees).toBe(longAcre.datumLatitudeDegrees);
  });

  it('what is left out, has too few places or no room changes nothing', () => {
    const tree: SurveyFeature = { points: [point(1, 1)] };
    expect(fits(tree, 'flyingArea')).toBe(false);
    const choices = (kind: Kind | ''): { kind: Kind | ''; name: string; height: undefined }[] => [
      { kind, name: '', height: undefined },
    ];
    expect(merged(longAcre, [tree], choices(''), datum, stems)).toEqual(longAcre);
    expect(merged(longAcre, [tree], choices('flyingArea'), datum, stems)).toEqual(longAcre);
    const full = { ...longAcre, strips: Array.from({ length: 12 }, () => ({ name: 'x' })) };
    expect(merged(full, [box], choices('strips'), datum, stems)).toEqual(full);
  });

  it('a new flying area takes the place of the old one', () => {
    const out = merged(longAcre, [box], [{ kind: 'flyingArea', name: '', height: undefined }], datum, stems);
    expect(out.flyingArea?.corners).toHaveLength(4);
    expect(out.flyingArea?.corners?.[1]).toEqual(point(200, -5));
  });
});

describe('walking', () => {
  it('better positions count more, and poor ones not at all', () => {
    const mean = averaged([
      { latitude: 54, longitude: -1, accuracy: 3 },
      { latitude: 54.0003, longitude: -1, accuracy: 6 },
      { latitude: 60, longitude: 20, accuracy: 400 },
    ]);
    expect(mean?.latitude).toBeCloseTo(54.00006, 9);
    expect(mean?.accuracy).toBe(3);
    expect(averaged([{ latitude: 1, longitude: 1, accuracy: 51 }])).toBeUndefined();
    expect(averaged([])).toBeUndefined();
  });

  it('the 180th meridian needs no care', () => {
    const mean = averaged([
      { latitude: 0, longitude: 179.9999, accuracy: 5 },
      { latitude: 0, longitude: -179.9997, accuracy: 5 },
    ]);
    expect(mean?.longitude).toBeCloseTo(-179.9999, 9);
  });

  it('the first corner of a field without a datum becomes the datum, and the survey says how it came about', () => {
    const datum = { latitude: 54.2, longitude: -1.4 };
    const corners = [
      { x: 0, y: 0 },
      { x: 100, y: 0 },
      { x: 100, y: 80 },
    ].map((at) => ({ ...toPlace(datum, at), accuracy: 4 }));
    const out = withWalked({}, { kind: 'flyingArea', corners }, 'area', new Date('2026-05-02T10:00:00Z'));
    expect(out.datumLatitudeDegrees).toBe(54.2);
    expect(out.flyingArea?.corners?.[2]?.xMeters).toBeCloseTo(100, 2);
    expect(out.flyingArea?.corners?.[2]?.yMeters).toBeCloseTo(80, 2);
    expect(out.survey).toEqual({
      method: 'SURVEY_METHOD_WALKED',
      date: '2026-05-02',
      positionSpreadMeters: 4,
    });
    expect(walkedSpread([])).toBeUndefined();
  });
});

describe('plan', () => {
  it('nearer keeps the chosen place in the middle and comes back to metres', () => {
    const scale = fitScale(
      [
        { x: 0, y: 0 },
        { x: 400, y: 300 },
      ],
      340,
      360,
    );
    if (!scale) throw new Error('no scale');
    const close = nearer(scale, 8, { x: 120, y: 90 });
    const at = toPage({ x: 120, y: 90 }, close);
    expect(at.x).toBeCloseTo(170, 6);
    expect(inFrame(at, close)).toBe(true);
    expect(inFrame(toPage({ x: 400, y: 300 }, close), close)).toBe(false);
    const back = toField(at, close);
    expect(back.x).toBeCloseTo(120, 9);
    expect(back.y).toBeCloseTo(90, 9);
  });

  it('a tap is as far from an outline as from its nearest side', () => {
    const square = [
      { x: 0, y: 0 },
      { x: 10, y: 0 },
      { x: 10, y: 10 },
      { x: 0, y: 10 },
    ];
    expect(distanceTo(square, true, { x: 2, y: 5 })).toBe(2);
    expect(distanceTo(square, false, { x: 2, y: 5 })).toBe(5);
    expect(distanceTo([{ x: 3, y: 4 }], false, { x: 0, y: 0 })).toBe(5);
  });

  it('numbers keep off the places that are taken', () => {
    const [at] = spread([{ x: 50, y: 50 }], 20, [{ x: 50, y: 50 }]);
    expect(Math.hypot((at?.x ?? 0) - 50, (at?.y ?? 0) - 50)).toBeGreaterThanOrEqual(20);
  });
});

describe('terms', () => {
  const permission = { validFromDate: '2026-03-01', validToDate: '2026-11-30' };
  it.each([
    ['2026-02-28', true],
    ['2026-03-01', false],
    ['2026-11-30', false],
    ['2026-12-01', true],
  ])('on %s the permission is amiss: %s', (day, amiss) => {
    expect(permissionState(permission, new Date(`${day}T12:00:00Z`)) !== '').toBe(amiss);
  });
  it('no dates are no news', () => {
    expect(permissionState(undefined)).toBe('');
  });
});

it('what was taken back can be done again until something else is typed', () => {
  let trail = startTrail('a');
  for (const typed of ['b', 'c']) trail = step(trail, typed, '');
  trail = undo(undo(trail));
  expect(trail.now).toBe('a');
  expect(redo(redo(redo(trail))).now).toBe('c');
  expect(undo(redo(trail)).now).toBe('a');
  expect(redo(step(trail, 'd', '')).now).toBe('d');
});
