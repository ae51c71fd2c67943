import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { FieldDescription } from '../../src/app/wire';
import {
  bandOf,
  groundAt,
  heightAt,
  labelMiddle,
  levelOff,
  meets,
  postsUnder,
  prolong,
  sideView,
  worstPost,
} from '../../src/drawings/profileGeometry';

const quarryTop = JSON.parse(
  readFileSync(new URL('../../../testdata/demo/quarry_top.json', import.meta.url), 'utf8'),
) as FieldDescription;

const eastward = [
  { x: 0, y: 0 },
  { x: 50, y: 0 },
  { x: 100, y: 0 },
];

describe('meets', () => {
  it('gives the distance along the track at which a line is crossed', () => {
    const hedge = {
      name: 'hedge',
      points: [
        { xMeters: 70, yMeters: -10 },
        { xMeters: 70, yMeters: 10 },
      ],
    };
    expect(meets(eastward, hedge, 5)).toBeCloseTo(70, 9);
  });

  it('misses a line beside the track or behind its end', () => {
    const beside = {
      name: 'a',
      points: [
        { xMeters: 10, yMeters: 5 },
        { xMeters: 90, yMeters: 5 },
      ],
    };
    const beyond = {
      name: 'b',
      points: [
        { xMeters: 120, yMeters: -5 },
        { xMeters: 120, yMeters: 5 },
      ],
    };
    expect(meets(eastward, beside, 20)).toBeUndefined();
    expect(meets(eastward, beyond, 20)).toBeUndefined();
  });

  it('takes a single point within reach, at its nearest distance', () => {
    const tree = { name: 'tree', points: [{ xMeters: 60, yMeters: 8 }] };
    expect(meets(eastward, tree, 10)).toBeCloseTo(60, 9);
    expect(meets(eastward, tree, 5)).toBeUndefined();
  });

  it('meets a closed outline at its first wall, the closing one too', () => {
    const barn = {
      name: 'barn',
      closed: true,
      points: [
        { xMeters: 40, yMeters: -5 },
        { xMeters: 60, yMeters: -5 },
        { xMeters: 60, yMeters: 5 },
        { xMeters: 40, yMeters: 5 },
      ],
    };
    expect(meets(eastward, barn, 1)).toBeCloseTo(40, 9);
  });
});

describe('heightAt', () => {
  const line = [
    { x: 0, y: 1 },
    { x: 10, y: 3 },
  ];
  it('is straight between points and unknown outside', () => {
    expect(heightAt(line, 5)).toBe(2);
    expect(heightAt(line, 10)).toBe(3);
    expect(heightAt(line, 11)).toBeUndefined();
  });
});

describe('postsUnder', () => {
  it('finds both gorse banks of Quarry Top under a launch on 250 degrees, nearest first', () => {
    const a = (250 * Math.PI) / 180;
    const track = [0, 100, 200].map((d) => ({ x: d * Math.sin(a), y: d * Math.cos(a) }));
    const profile = [
      { x: 0, y: 1 },
      { x: 200, y: 21 },
    ];
    const posts = postsUnder(quarryTop, track, profile, 0);
    expect(posts.map((p) => p.name)).toEqual(['near gorse bank', 'far gorse bank']);
    for (const post of posts) expect(post.clearance).toBeCloseTo(1 + post.distance / 10 - post.top, 9);
    expect(worstPost(posts)?.name).toBe('near gorse bank');
  });

  it('has no worst post without obstacles', () => {
    expect(worstPost([])).toBeUndefined();
  });
});

describe('launch place', () => {
  it('reads distance and height of a path from the side', () => {
    expect(sideView({ points: [{ zMeters: 0.5 }, { xMeters: 10, zMeters: 2, yMeters: 0 }] })).toEqual([
      { x: 0, y: 0.5 },
      { x: 10, y: 2 },
    ]);
    expect(sideView(undefined)).toEqual([]);
  });

  it('takes the ground of the spot, or of the strip’s end the launch starts from', () => {
    const field: FieldDescription = {
      strips: [{ name: '06/24', start: { zMeters: 1 }, end: { zMeters: 4 } }],
      launchSpots: [{ name: 'pad', position: { zMeters: 2 } }],
    };
    expect(groundAt(field, { launchSpot: 'pad' })).toBe(2);
    expect(groundAt(field, { strip: '06/24' })).toBe(1);
    expect(groundAt(field, { strip: '06/24', stripReversed: true })).toBe(4);
    expect(groundAt(field, {})).toBe(0);
  });
});

describe('beyond the computed climb', () => {
  const climb = [
    { x: 0, y: 0 },
    { x: 100, y: 50 },
  ];
  it('goes on straight', () => {
    const longer = prolong(eastward, 25);
    expect(longer.at(-1)).toEqual({ x: 125, y: 0 });
    expect(prolong([{ x: 0, y: 0 }], 25)).toHaveLength(1);
  });

  it('levels off where it meets the circuit’s height', () => {
    expect(levelOff(climb, 20)).toEqual([
      { x: 0, y: 0 },
      { x: 40, y: 20 },
      { x: 100, y: 20 },
    ]);
    expect(levelOff(climb, undefined)).toBe(climb);
    expect(levelOff(climb, 60)).toEqual(climb);
  });

  it('keeps the band around the path below the same height', () => {
    const path = {
      points: [
        { zMeters: 1, halfBandMeters: 0.5 },
        { xMeters: 10, zMeters: 9, halfBandMeters: 2 },
      ],
    };
    expect(bandOf(path, 10)).toEqual([
      { x: 0, y: 1.5 },
      { x: 10, y: 10 },
      { x: 10, y: 7 },
      { x: 0, y: 0.5 },
    ]);
  });
});

describe('labelMiddle', () => {
  it('keeps a label between the edges', () => {
    expect(labelMiddle(10, 100, 0, 300)).toBe(50);
    expect(labelMiddle(290, 100, 0, 300)).toBe(250);
    expect(labelMiddle(150, 100, 0, 300)).toBe(150);
  });
});
