import { describe, expect, it } from 'vitest';
import {
  domainOf,
  freeMarks,
  niceMarks,
  niceStep,
  stripGeometry,
  type StripInput,
} from '../../src/drawings/stripGeometry';

const least: StripInput = {
  value: 4,
  bandLow: 3.5,
  bandHigh: 4.5,
  limit: 3,
  limitSense: 'LIMIT_SENSE_AT_LEAST',
  verdict: 'VERDICT_HOLDS',
};

describe('stripGeometry', () => {
  it('keeps the bar clear of the post when the whole band meets a least value', () => {
    const strip = stripGeometry(least, 300);
    expect(strip.unknown).toBe(false);
    expect(strip.posts).toHaveLength(1);
    expect(strip.bar?.x).toBeGreaterThan(strip.posts[0]?.x ?? Infinity);
    expect(strip.wrong).toEqual([{ x: 0, width: strip.posts[0]?.x }]);
  });

  it('lets the bar touch the post when tight', () => {
    const strip = stripGeometry(
      { ...least, value: 3.2, bandLow: 2.8, bandHigh: 3.6, verdict: 'VERDICT_TIGHT' },
      300,
    );
    const post = strip.posts[0]?.x ?? 0;
    expect(strip.bar?.x).toBeLessThan(post);
    expect((strip.bar?.x ?? 0) + (strip.bar?.width ?? 0)).toBeGreaterThan(post);
    expect(strip.tick).toBeGreaterThan(post);
  });

  it('marks the far side as wrong for a greatest value', () => {
    const strip = stripGeometry({ ...least, limit: 5, limitSense: 'LIMIT_SENSE_AT_MOST' }, 300);
    const post = strip.posts[0]?.x ?? 0;
    expect(strip.wrong).toEqual([{ x: post, width: 300 - post }]);
  });

  it('marks both ends as wrong for a window', () => {
    const strip = stripGeometry({ ...least, upperLimit: 6, limitSense: 'LIMIT_SENSE_WITHIN' }, 300);
    expect(strip.posts.map((p) => p.value)).toEqual([3, 6]);
    expect(strip.wrong).toHaveLength(2);
    expect(strip.wrong[1]?.x).toBe(strip.posts[1]?.x);
  });

  it('asks nothing where a finding holds or fails without a number', () => {
    const bare: StripInput = { limit: 3, limitSense: 'LIMIT_SENSE_AT_LEAST' };
    const strip = stripGeometry({ ...bare, verdict: 'VERDICT_FAILS' }, 300);
    expect([strip.unknown, strip.bar, strip.tick]).toEqual([false, undefined, undefined]);
    expect(strip.posts).toHaveLength(1);
    expect(stripGeometry({ ...bare, verdict: 'VERDICT_HOLDS' }, 300).unknown).toBe(false);
    expect(stripGeometry(bare, 300).unknown).toBe(true);
  });

  it('draws no bar for an unknown finding, and still its post', () => {
    const strip = stripGeometry(
      { limit: 0.2, limitSense: 'LIMIT_SENSE_AT_LEAST', verdict: 'VERDICT_UNKNOWN' },
      300,
    );
    expect(strip.unknown).toBe(true);
    expect(strip.bar).toBeUndefined();
    expect(strip.tick).toBeUndefined();
    expect(strip.posts).toHaveLength(1);
  });

  it('has neither post nor wrong side without a limit', () => {
    const strip = stripGeometry({ ...least, limitSense: 'LIMIT_SENSE_NONE' }, 300);
    expect(strip.posts).toEqual([]);
    expect(strip.wrong).toEqual([]);
  });

  it('shows a sharp value as a visible bar within the strip', () => {
    const strip = stripGeometry({ ...least, bandLow: 4, bandHigh: 4 }, 300);
    expect(strip.bar?.width).toBe(2);
    expect(strip.tick).toBeGreaterThan(0);
    expect(strip.tick).toBeLessThan(300);
  });
});

describe('scale', () => {
  it('has room at both ends and one for a single number', () => {
    expect(domainOf({ value: 10 })).toEqual([10 - 2 * 0.22, 10 + 2 * 0.22]);
    expect(domainOf({})).toBeUndefined();
    expect(domainOf({ value: 0 })?.[0]).toBeLessThan(0);
  });

  it.each([
    [10, 5, 2],
    [1, 4, 0.5],
    [730, 4, 200],
    [0.03, 3, 0.01],
  ])('step for %f in %i', (span, count, step) => {
    expect(niceStep(span, count)).toBeCloseTo(step, 12);
  });

  it('marks are round and inside', () => {
    expect(niceMarks(0.93, 1.12, 4)).toEqual([0.95, 1, 1.05, 1.1]);
  });

  it('leaves out marks that would run into the post or over the edge', () => {
    const strip = stripGeometry(least, 300);
    for (const mark of freeMarks(strip, 300, 44)) {
      expect(Math.abs(mark.x - (strip.posts[0]?.x ?? 0))).toBeGreaterThan(44);
      expect(mark.x).toBeGreaterThan(22);
    }
  });
});

it('a band of rounding alone gets a scale with marks that differ', () => {
  const band = { value: 141.994617577, bandLow: 141.994617576, bandHigh: 141.994617578 };
  const marks = stripGeometry({ ...band, limitSense: 'LIMIT_SENSE_NONE' }, 300).marks.map((m) => m.value);
  expect(marks.length).toBeGreaterThan(1);
  expect(new Set(marks).size).toBe(marks.length);
});
