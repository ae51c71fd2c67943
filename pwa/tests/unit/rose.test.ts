import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { FieldDescription, WindWay } from '../../src/app/wire';
import {
  gistOf,
  holdsIn,
  mostOf,
  nearestRange,
  polar,
  rings,
  sectorWidth,
  stripPosts,
  topSpeed,
  wedge,
  widestWay,
} from '../../src/drawings/roseGeometry';

/** Eight directions with their greatest winds; zero is none. */
const way = (name: string, most: number[], least = 0): WindWay => ({
  name,
  ranges: most.map((m, i) => ({
    fromDegrees: (i * 360) / most.length,
    holds: m > 0,
    leastMetersPerSecond: least,
    mostMetersPerSecond: m,
  })),
});
const north = way('01', [10, 9, 5, 2, 1, 2, 5, 9]);

describe('polar drawing', () => {
  // The page's y grows downwards; north is up, east to the right.
  it.each([
    [0, 0, -1],
    [90, 1, 0],
    [180, 0, 1],
    [270, -1, 0],
  ])('%i degrees', (degrees, x, y) => {
    const p = polar(degrees, 1);
    expect(p.x).toBeCloseTo(x, 12);
    expect(p.y).toBeCloseTo(y, 12);
  });

  it('a wedge reaches from its inner to its outer radius on both sides of its direction', () => {
    const numbers = (wedge(0, 90, 10, 20).match(/-?\d+(\.\d+)?/g) ?? []).map(Number);
    expect(numbers.slice(0, 2)).toEqual([-14.1, -14.1]);
    expect(wedge(0, 90, 0, 20).match(/A/g)).toHaveLength(1);
    expect(wedge(0, 90, 10, 20).match(/A/g)).toHaveLength(2);
    expect(wedge(0, 360, 0, 20)).not.toContain('NaN');
  });

  it('rings are round and the last one holds the top', () => {
    expect(rings(9.3, 4)).toEqual([5, 10]);
    expect(rings(20, 4)).toEqual([5, 10, 15, 20]);
    for (const top of [0.7, 1, 3.3, 12, 47]) expect(rings(top, 4).at(-1)).toBeGreaterThanOrEqual(top);
  });
});

describe('winds that hold', () => {
  it('the range nearest in direction answers, across north too', () => {
    expect(nearestRange(north, 350)?.fromDegrees).toBe(0);
    expect(nearestRange(north, 100)?.fromDegrees).toBe(90);
    expect(holdsIn(north, 350, 10)).toBe(true);
    expect(holdsIn(north, 350, 10.1)).toBe(false);
    expect(holdsIn(way('none', [0, 0, 0, 0]), 0, 0)).toBe(false);
    expect(holdsIn(way('needs wind', [10, 10, 10, 10], 3), 0, 2)).toBe(false);
    expect(holdsIn(undefined, 0, 1)).toBe(false);
  });

  it('says the strongest wind, the directions at half of it and what holds from everywhere', () => {
    expect(gistOf(north)).toEqual({ most: 10, at: 0, from: 270, to: 90, everywhere: 1 });
    expect(gistOf(way('', [10, 9, 5, 0, 0, 0, 5, 9]))?.everywhere).toBe(0);
    expect(gistOf(way('', [4, 4, 4, 4]))?.everywhere).toBe(4);
    expect(gistOf(way('', [0, 0]))).toBeUndefined();
    expect(gistOf(undefined)).toBeUndefined();
  });

  it('the widest way covers most of the rose', () => {
    const weak = way('19', [1, 2, 3, 4, 5, 4, 3, 2]);
    expect(widestWay([weak, north])?.name).toBe('01');
    expect(widestWay([])).toBeUndefined();
  });

  it('the scale holds every wind and the day', () => {
    expect(topSpeed([north], [4, undefined])).toBe(10);
    expect(topSpeed([north], [4, 13])).toBe(13);
    expect(sectorWidth(north)).toBe(45);
    expect(sectorWidth(undefined)).toBe(0);
    expect(mostOf({ holds: false, mostMetersPerSecond: 7 })).toBe(0);
  });
});

describe('strips', () => {
  it('stand at both ends of the rose under their own names', () => {
    const longAcre = JSON.parse(
      readFileSync(new URL('../../../testdata/demo/long_acre.json', import.meta.url), 'utf8'),
    ) as FieldDescription;
    const posts = stripPosts(longAcre);
    expect(posts.map((p) => p.name)).toEqual(['06', '24']);
    expect(posts[0]?.heading).toBeCloseTo(60, 1);
    expect(posts[1]?.heading).toBeCloseTo(240, 1);
    expect(stripPosts({})).toEqual([]);
  });
});
