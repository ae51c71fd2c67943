import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { LiftingSurface, ModelDescription } from '../../src/app/wire';
import {
  areaOf,
  ballRadius,
  bodyOutlines,
  controlCorners,
  cutAt,
  cutsOf,
  hull,
  isMirrored,
  meanChordPlace,
  thicknessOf,
  viewOf,
  type ViewName,
} from '../../src/drawings/threeViewGeometry';
import { extentOf, layOut, toFrame, type Extent } from '../../src/drawings/threeViewLayout';
import { measuresOf } from '../../src/drawings/threeViewTable';

const model = (name: string): ModelDescription =>
  JSON.parse(
    readFileSync(new URL(`../../../testdata/demo/${name}.json`, import.meta.url), 'utf8'),
  ) as ModelDescription;

/** Half span 2 m, chord 1 m at the root and 0.5 m at the tip, leading edge swept back 0.5 m. */
const wing: LiftingSurface = {
  name: 'wing',
  role: 'SURFACE_ROLE_WING',
  stations: [
    { leadingEdgeXMeters: 1, leadingEdgeYMeters: 0, leadingEdgeZMeters: 0, chordMeters: 1 },
    { leadingEdgeXMeters: 1.5, leadingEdgeYMeters: 2, leadingEdgeZMeters: 0, chordMeters: 0.5 },
  ],
};

const spotsOf = (m: ModelDescription, view: ViewName, kind: string): { x: number; y: number }[] =>
  viewOf(m, view)
    .outlines.filter((o) => o.kind === kind)
    .flatMap((o) => o.spots);

describe('hull', () => {
  it('keeps the corners and drops what lies inside or on an edge', () => {
    const square = [
      { x: 0, y: 0 },
      { x: 2, y: 0 },
      { x: 2, y: 2 },
      { x: 0, y: 2 },
    ];
    const found = hull([...square, { x: 1, y: 1 }, { x: 1, y: 0 }]);
    expect(found).toHaveLength(4);
    expect(areaOf(found)).toBeCloseTo(4, 12);
  });

  it('leaves less than a triangle as it is', () => {
    expect(hull([])).toEqual([]);
    expect(hull([{ x: 1, y: 1 }])).toEqual([{ x: 1, y: 1 }]);
  });
});

describe('surfaces', () => {
  it('shows the wing from above with its true area on both sides', () => {
    const outlines = viewOf({ surfaces: [wing] }, 'plan').outlines;
    expect(outlines).toHaveLength(2);
    for (const o of outlines) expect(areaOf(o.spots)).toBeCloseTo(1.5, 9);
  });

  it('shows nothing of a flat wing from the front but its thickness', () => {
    const thick = {
      ...wing,
      stations: wing.stations?.map((s) => ({ ...s, section: { thicknessRatio: 0.1 } })),
    };
    const e = extentOf(spotsOf({ surfaces: [thick as LiftingSurface] }, 'front', 'surface'));
    expect(e?.right).toBeCloseTo(2, 12);
    expect(e?.left).toBeCloseTo(-2, 12);
    expect((e?.high ?? 0) - (e?.low ?? 0)).toBeCloseTo(0.1, 9);
  });

  it.each([
    ['SURFACE_ROLE_WING', 0, undefined, true],
    ['SURFACE_ROLE_FIN', 0, undefined, false],
    ['SURFACE_ROLE_FIN', 0.4, undefined, true],
    ['SURFACE_ROLE_FIN', 0.4, false, false],
    ['SURFACE_ROLE_TAILPLANE', 0, undefined, true],
  ] as const)('%s at y %f, said %s: mirrored %s', (role, y, said, expected) => {
    const stations = [{ leadingEdgeYMeters: y }, { leadingEdgeYMeters: y }];
    expect(isMirrored({ role, stations, ...(said === undefined ? {} : { mirrored: said }) })).toBe(expected);
  });

  it('takes thickness from the section, and never refuses a strange one', () => {
    expect(thicknessOf({ section: { designation: '2412' } })).toBeCloseTo(0.12, 12);
    expect(thicknessOf({ section: { thicknessRatio: 0.08, designation: '2412' } })).toBe(0.08);
    expect(thicknessOf({ section: { designation: '' } })).toBeGreaterThan(0);
  });

  it('raises the leading edge with the incidence', () => {
    const tilted = { ...wing, incidenceDegrees: { value: 10 } };
    const e = extentOf(spotsOf({ surfaces: [tilted] }, 'side', 'surface'));
    expect(e?.low).toBeLessThan(-Math.sin((10 * Math.PI) / 180) * 0.99);
  });
});

describe('cuts between stations', () => {
  it('lie straight between their neighbours', () => {
    const cut = cutAt(cutsOf(wing), 0.5);
    expect(cut?.place.x).toBeCloseTo(1.25, 12);
    expect(cut?.place.y).toBeCloseTo(1, 12);
    expect(cut?.chord).toBeCloseTo(0.75, 12);
  });

  it('carry a control from its inner to its outer end, along the hinge and back along the trailing edge', () => {
    const corners = controlCorners(wing, { innerSpanRatio: 0.5, outerSpanRatio: 1, chordRatio: 0.2 });
    expect(corners.map((c) => [c.x, c.y].map((v) => Number(v.toFixed(9))))).toEqual([
      [1.85, 1],
      [1.9, 2],
      [2, 2],
      [2, 1],
    ]);
  });

  it('find where the chord is the mean one', () => {
    expect(meanChordPlace(wing, 0.75)?.y).toBeCloseTo(1, 12);
    expect(meanChordPlace(wing, 2)).toBeUndefined();
  });
});

it('shows a control where its face is seen: an elevator from above, a rudder from the side', () => {
  const names = (view: ViewName): string[] =>
    viewOf(model('sandmartin'), view)
      .outlines.filter((o) => o.kind === 'control')
      .map((o) => o.name);
  expect(names('plan')).toEqual(['aileron', 'aileron', 'flap', 'flap', 'elevator', 'elevator']);
  expect(names('side')).toEqual(['rudder']);
  expect(names('front')).toEqual([]);
});

it('draws a body at its widths from above and at its heights from the side', () => {
  const body = {
    yMeters: 0.5,
    mirrored: true,
    stations: [
      { xMeters: 0, widthMeters: 0.2, heightMeters: 0.1, centerZMeters: 0.3 },
      { xMeters: 1, widthMeters: 0.4, heightMeters: 0.2, centerZMeters: 0.3 },
    ],
  };
  const [starboard, port] = bodyOutlines(body, 'plan');
  expect(extentOf(starboard ?? [])).toMatchObject({ left: 0, right: 1 });
  expect(extentOf(starboard ?? [])?.high).toBeCloseTo(0.7, 9);
  expect(extentOf(port ?? [])?.low).toBeCloseTo(-0.7, 9);
  const side = extentOf(bodyOutlines(body, 'side')[0] ?? []);
  expect((side?.high ?? 0) - (side?.low ?? 0)).toBeCloseTo(0.2, 9);
});

it('draws a tank as a ball of its volume', () => {
  const r = ballRadius(2.6);
  expect((4 / 3) * Math.PI * r ** 3).toBeCloseTo(0.0026, 12);
  expect(ballRadius(0)).toBe(0);
});

describe('layout', () => {
  const e = (right: number, high: number): Extent => ({ left: 0, right, low: 0, high });
  const extents = { plan: e(2, 2), side: e(2, 0.5), front: e(2, 0.5) };

  it.each([320, 360, 640, 1200])(
    'keeps every view on a page %i wide, one scale for all, none on another',
    (width) => {
      const layout = layOut(extents, width);
      const boxes = layout.frames.map((f) => ({
        left: f.left,
        right: f.left + (f.extent.right - f.extent.left) * layout.perMeter,
        top: f.top,
        bottom: f.top + (f.extent.high - f.extent.low) * layout.perMeter,
      }));
      for (const b of boxes) {
        expect(b.left).toBeGreaterThanOrEqual(0);
        expect(b.right).toBeLessThanOrEqual(width + 1e-9);
        expect(b.bottom).toBeLessThanOrEqual(layout.height);
      }
      for (const [i, a] of boxes.entries())
        for (const b of boxes.slice(i + 1))
          expect(a.right <= b.left || b.right <= a.left || a.bottom <= b.top || b.bottom <= a.top).toBe(true);
    },
  );

  it('puts up upwards', () => {
    const layout = layOut(extents, 360);
    const frame = layout.frames[0];
    if (!frame) throw new Error('no frame');
    const [low, high] = [0, 1].map((y) => toFrame({ x: 0, y }, frame, layout.perMeter).y);
    expect(high).toBeLessThan(low ?? 0);
  });
});

describe('models of the demonstration', () => {
  it.each(['dabchick', 'sandmartin', 'redshank', 'nightjar'])(
    '%s has finite outlines in every view',
    (name) => {
      for (const view of ['plan', 'side', 'front'] as const) {
        const spots = viewOf(model(name), view).outlines.flatMap((o) => o.spots);
        expect(spots.length).toBeGreaterThan(10);
        for (const s of spots) expect(Number.isFinite(s.x) && Number.isFinite(s.y)).toBe(true);
      }
    },
  );

  it('is alike to port and starboard from the front', () => {
    const e = extentOf(spotsOf(model('nightjar'), 'front', 'surface'));
    expect(e?.left).toBeCloseTo(-(e?.right ?? 0), 9);
  });

  it('lists the span and chords of a wing', () => {
    const found = measuresOf(model('sandmartin')).find((m) => m.name === 'wing');
    expect(found?.measures.map(([, v]) => v)).toEqual([1.96, 0.46, 0.25]);
  });
});

it('has nothing to draw of an empty model, and an empty station harms nothing', () => {
  expect(viewOf({}, 'plan').outlines).toEqual([]);
  expect(extentOf([])).toBeUndefined();
  const strange = viewOf({ surfaces: [{ stations: [{}, {}], controls: [{}] }], bodies: [{}] }, 'plan');
  for (const o of strange.outlines)
    for (const s of o.spots) expect(Number.isFinite(s.x) && Number.isFinite(s.y)).toBe(true);
});
