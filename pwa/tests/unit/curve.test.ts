import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { defaultUnits } from '../../src/app/units';
import type { Report, ReportCurve } from '../../src/app/wire';
import { cleanBeside, partsOf } from '../../src/drawings/breakdownGeometry';
import {
  axisOf,
  bandOutline,
  graphOf,
  inkOf,
  lettersFor,
  placeLabels,
  type Label,
} from '../../src/drawings/curveGeometry';

const report = JSON.parse(readFileSync(new URL('report.fixture.json', import.meta.url), 'utf8')) as Report;
const few = { x: 4, y: 5 };

describe('axis', () => {
  it.each([
    [[0.0305, 0.117], 0, 0.12, 0.02],
    [[-6, 12.2], -10, 15, 5],
    [[0.925, 0.985], 0.92, 0.99, 0.01],
    [[16, 84], 0, 100, 20],
    [[-18, -2], -20, 0, 5],
  ])('around %j runs from %f to %f in steps of %f', (values, low, high, step) => {
    const axis = axisOf(values, 6);
    expect(axis.low).toBeCloseTo(low, 9);
    expect(axis.high).toBeCloseTo(high, 9);
    expect(axis.step).toBeCloseTo(step, 9);
    expect(axis.marks[0]).toBeCloseTo(low, 9);
    expect(axis.marks.at(-1)).toBeCloseTo(high, 9);
  });

  it.each([[[]], [[0]], [[5]], [[-3, -3]], [[Number.NaN]], [[1e9, 1e9 + 1e-6]]])(
    'around %j has room and finite marks',
    (values) => {
      const axis = axisOf(values, 5);
      expect(axis.high).toBeGreaterThan(axis.low);
      expect(axis.marks.length).toBeGreaterThan(1);
      expect(axis.marks.every(Number.isFinite)).toBe(true);
      for (const v of values.filter(Number.isFinite)) {
        expect(v).toBeGreaterThanOrEqual(axis.low);
        expect(v).toBeLessThanOrEqual(axis.high);
      }
    },
  );
});

describe('band', () => {
  it('goes out along the upper end and back along the lower', () => {
    const outline = bandOutline([
      { x: 0, y: 1, low: 0.5, high: 2 },
      { x: 1, y: 1, low: 0.6, high: 3 },
      { x: 2, y: 1 },
    ]);
    expect(outline).toEqual([
      { x: 0, y: 2 },
      { x: 1, y: 3 },
      { x: 1, y: 0.6 },
      { x: 0, y: 0.5 },
    ]);
  });

  it('is none where fewer than two points have one', () => {
    expect(bandOutline([{ x: 0, y: 1, low: 0, high: 2 }])).toEqual([]);
  });
});

describe('graph', () => {
  const curve: ReportCurve = {
    xUnit: 'm/s',
    yUnit: 'rad',
    series: [
      {
        name: 'full',
        points: [
          { x: 10, y: 0 },
          { x: 20, y: Math.PI / 18 },
        ],
      },
      { name: 'nothing', points: [] },
      { name: 'empty', points: [{ x: 15, y: 0 }] },
    ],
    marks: [{ name: 'lift-off', x: 40, y: 0 }],
  };

  it('speaks the units of the reader, and shows marks beyond the lines', () => {
    const graph = graphOf(curve, { ...defaultUnits, speed: 'km/h' }, few);
    expect(graph?.lines.map((l) => l.name)).toEqual(['full', 'empty']);
    expect(graph?.lines[0]?.spots[1]?.x).toBeCloseTo(72, 9);
    expect(graph?.lines[0]?.spots[1]?.y).toBeCloseTo(10, 9);
    expect(graph?.x.high).toBeGreaterThanOrEqual(144);
  });

  it('tells lines apart by dashes', () => {
    const lines = graphOf(curve, defaultUnits, few)?.lines ?? [];
    expect(new Set(lines.map((l) => l.dash)).size).toBe(lines.length);
  });

  it.each([
    [{}],
    [{ series: [] }],
    [{ series: [{ name: 'a' }] }],
    [{ series: [{ points: [{ x: Number.NaN, y: 1 }] }] }],
  ])('has nothing to draw of %j', (empty) => {
    expect(graphOf(empty, defaultUnits, few)).toBeUndefined();
  });

  it('draws every curve of a report', () => {
    for (const c of report.curves ?? []) {
      const graph = graphOf(c, defaultUnits, few);
      expect(graph?.lines.length, c.id).toBe(c.series?.length);
      for (const l of graph?.lines ?? [])
        for (const s of [...l.spots, ...l.band]) {
          expect(s.x).toBeGreaterThanOrEqual((graph?.x.low ?? 0) - 1e-9);
          expect(s.x).toBeLessThanOrEqual((graph?.x.high ?? 0) + 1e-9);
          expect(s.y).toBeGreaterThanOrEqual((graph?.y.low ?? 0) - 1e-9);
          expect(s.y).toBeLessThanOrEqual((graph?.y.high ?? 0) + 1e-9);
        }
    }
  });
});

describe('labels', () => {
  const frame = { left: 50, right: 340, top: 30, bottom: 220 };
  const box = (l: Label & { atX: number; atY: number }): number[] => [
    l.atX - l.text.length * 3.5,
    l.atX + l.text.length * 3.5,
    l.atY - 9,
    l.atY + 9,
  ];

  it('stay in the frame and off each other even where their lines end together', () => {
    const wanted = ['Tanks full', 'Tanks empty', 'Greatest throw', 'Circuit'].map((text) => ({
      x: 338,
      y: 218,
      text,
    }));
    const boxes = placeLabels(wanted, frame, [], 7, 18).map(box);
    for (const [i, [l = 0, r = 0, t = 0, b = 0]] of boxes.entries()) {
      expect(l).toBeGreaterThanOrEqual(frame.left);
      expect(r).toBeLessThanOrEqual(frame.right);
      expect(t).toBeGreaterThanOrEqual(frame.top);
      expect(b).toBeLessThanOrEqual(frame.bottom);
      for (const [l2 = 0, r2 = 0, t2 = 0, b2 = 0] of boxes.slice(i + 1))
        expect(r <= l2 || r2 <= l || b <= t2 || b2 <= t).toBe(true);
    }
  });

  it('stay in the frame where they nearly fill it', () => {
    const text = 'With the own drag of every section';
    const [placed] = placeLabels([{ x: 270, y: 60, text }], frame, [], 8, 18);
    expect((placed?.atX ?? 0) - text.length * 4).toBeGreaterThanOrEqual(frame.left);
    expect((placed?.atX ?? 0) + text.length * 4).toBeLessThanOrEqual(frame.right);
  });

  it('give way to letters where a name would fill the drawing', () => {
    expect(lettersFor(['Stall', 'Circuit'], 20)).toEqual([]);
    expect(lettersFor(['Stall', 'Clean: wing at 56 % of its half span'], 20)).toEqual(['A', 'B']);
  });

  it('get a lead where they stand far from their spot, and none where near', () => {
    const free = placeLabels([{ x: 200, y: 100, text: 'Stall' }], frame, [], 7, 18);
    expect(free[0]?.lead).toBeUndefined();
    const crowd = Array.from({ length: 12 }, () => ({ x: 200, y: 100, text: 'Greatest throw' }));
    expect(placeLabels(crowd, frame, [], 7, 18).some((l) => l.lead)).toBe(true);
  });

  it('keep off the ink where there is room', () => {
    const ink = inkOf(
      [
        [
          { x: 50, y: 100 },
          { x: 340, y: 100 },
        ],
      ],
      4,
    );
    const [placed] = placeLabels([{ x: 200, y: 100, text: 'Stall' }], frame, ink, 7, 18);
    expect(Math.abs((placed?.atY ?? 100) - 100)).toBeGreaterThanOrEqual(9);
  });
});

describe('parts of the drag', () => {
  it('come largest first with shares that add up to one', () => {
    const parts = partsOf(report);
    expect(parts[0]?.name).toBe('landing gear');
    expect(parts.map((p) => p.value)).toEqual([...parts.map((p) => p.value)].sort((a, b) => b - a));
    expect(parts.reduce((s, p) => s + p.share, 0)).toBeCloseTo(1, 12);
  });

  it.each([
    [0.05, 0.03, 0.05, 0.03],
    [0.05, 0.05, 0.05, undefined],
    [0.05, 0.03, 0.04, undefined],
    [undefined, 0.03, 0.05, undefined],
  ])('launch %d, clean %d, parts %d: beside it %d', (launch, clean, sum, expected) => {
    const quantities = [
      { id: 'drag.zero_lift', value: clean },
      ...(launch === undefined ? [] : [{ id: 'drag.zero_lift_launch', value: launch }]),
    ];
    expect(cleanBeside({ quantities }, sum)).toBe(expected);
  });

  it('are none without a report, and shares of nothing are nothing', () => {
    expect(partsOf(undefined)).toEqual([]);
    expect(partsOf({ quantities: [{ id: 'drag.part.wing', value: 0 }] })[0]?.share).toBe(0);
  });
});
