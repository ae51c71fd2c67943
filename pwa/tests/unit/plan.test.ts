import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { FieldDescription } from '../../src/app/wire';
import {
  barLength,
  farthest,
  fieldSpots,
  fitScale,
  line,
  ribbon,
  spread,
  stripCorners,
  toPage,
  windVector,
} from '../../src/drawings/planGeometry';

const longAcre = JSON.parse(
  readFileSync(new URL('../../../testdata/demo/long_acre.json', import.meta.url), 'utf8'),
) as FieldDescription;

describe('scale', () => {
  it('puts every point of a field on the page, north up and in proportion', () => {
    const spots = fieldSpots(longAcre);
    const scale = fitScale(spots, 340, 360);
    if (!scale) throw new Error('no scale');
    for (const spot of spots.map((s) => toPage(s, scale))) {
      expect(spot.x).toBeGreaterThanOrEqual(0);
      expect(spot.x).toBeLessThanOrEqual(340);
      expect(spot.y).toBeGreaterThanOrEqual(0);
      expect(spot.y).toBeLessThanOrEqual(scale.height);
    }
    const [origin, north, east] = [
      { x: 0, y: 0 },
      { x: 0, y: 100 },
      { x: 100, y: 0 },
    ].map((s) => toPage(s, scale)) as [
      { x: number; y: number },
      { x: number; y: number },
      { x: number; y: number },
    ];
    expect(north.y).toBeLessThan(origin.y);
    expect(east.x).toBeGreaterThan(origin.x);
    expect(east.x - origin.x).toBeCloseTo(origin.y - north.y, 9);
  });

  it('has nothing to fit without points', () => {
    expect(fitScale([], 300, 300)).toBeUndefined();
  });
});

describe('shapes', () => {
  it('a ribbon is as wide as its half widths say on both sides', () => {
    const outline = ribbon(
      [
        { x: 0, y: 0 },
        { x: 10, y: 0 },
      ],
      [1, 3],
    );
    expect(outline).toEqual([
      { x: 0, y: 1 },
      { x: 10, y: 3 },
      { x: 10, y: -3 },
      { x: 0, y: -1 },
    ]);
  });

  it('a strip has its width across its direction', () => {
    const corners = stripCorners({ x: 0, y: 0 }, { x: 0, y: 100 }, 18);
    expect(corners.map((c) => Math.abs(c.x))).toEqual([9, 9, 9, 9]);
  });

  it('a line becomes an SVG path', () => {
    expect(
      line(
        [
          { x: 0, y: 1.26 },
          { x: 2, y: 3 },
        ],
        true,
      ),
    ).toBe('M0 1.3L2 3Z');
    expect(line([])).toBe('');
  });

  it('finds the end of a line that lies farthest away', () => {
    expect(
      farthest(
        [
          { x: 1, y: 0 },
          { x: 5, y: 0 },
          { x: -2, y: 0 },
        ],
        { x: 0, y: 0 },
      ),
    ).toEqual({ x: 5, y: 0 });
  });
});

describe('wind', () => {
  // Page y grows downwards: wind from the north blows down, from the west to the right.
  it.each([
    [0, 0, 1],
    [90, -1, 0],
    [180, 0, -1],
    [270, 1, 0],
  ])('from %i degrees', (from, x, y) => {
    const v = windVector(from);
    expect(v.x).toBeCloseTo(x, 12);
    expect(v.y).toBeCloseTo(y, 12);
  });
});

describe('labels', () => {
  it('the scale bar is a round length no longer than asked', () => {
    expect(barLength(0.5, 100)).toBe(200);
    expect(barLength(0.3, 100)).toBe(200);
    expect(barLength(2, 100)).toBe(50);
  });

  it('moves numbers apart and keeps their order', () => {
    const same = Array.from({ length: 6 }, () => ({ x: 50, y: 50 }));
    const placed = spread(same, 20);
    expect(placed[0]).toEqual({ x: 50, y: 50 });
    for (const [i, a] of placed.entries())
      for (const b of placed.slice(i + 1))
        expect(Math.hypot(a.x - b.x, a.y - b.y)).toBeGreaterThanOrEqual(20 - 1e-9);
  });
});
