import { describe, expect, it } from 'vitest';
import type { FieldDescription, ReportPath } from '../../src/app/wire';
import { along, landingPosts } from '../../src/drawings/landingGeometry';

/** A strip to the east with a hedge across its approach, 140 m before the threshold. */
const field: FieldDescription = {
  strips: [{ name: '09/27', start: { xMeters: 0, yMeters: 0 }, end: { xMeters: 285, yMeters: 0 } }],
  obstacles: [
    {
      name: 'west hedge',
      points: [
        { xMeters: -140, yMeters: -50 },
        { xMeters: -140, yMeters: 50 },
      ],
      heightMeters: { value: 2.4, spread: 0.2 },
    },
  ],
};
/** Down from 20 m at 200 m before the threshold to 100 m beyond it, then rolling to 160 m. */
const plan: ReportPath = {
  id: 'landing.plan',
  points: [
    { xMeters: -200, yMeters: 0 },
    { xMeters: 100, yMeters: 0 },
    { xMeters: 160, yMeters: 0 },
  ],
};
const profile = [
  { x: -200, y: 20 },
  { x: 100, y: 0 },
  { x: 160, y: 0 },
];

describe('landing from the side', () => {
  it('an obstacle before the threshold stands at a negative distance, with the height over it', () => {
    const posts = landingPosts(field, plan, profile);
    expect(posts).toHaveLength(1);
    expect(posts[0]?.distance).toBeCloseTo(-140, 9);
    // 20 m less 60/300 of it, less the hedge
    expect(posts[0]?.clearance).toBeCloseTo(16 - 2.4, 9);
    expect(posts[0]?.spread).toBe(0.2);
  });

  it('a track that begins later still meets the profile at its end', () => {
    const short: ReportPath = { id: 'landing.plan', points: plan.points?.slice(1) ?? [] };
    expect(landingPosts(field, short, profile)).toEqual([]);
    const from160: ReportPath = {
      id: 'landing.plan',
      points: [{ xMeters: -160, yMeters: 0 }, ...(plan.points ?? []).slice(1)],
    };
    expect(landingPosts(field, from160, profile)[0]?.distance).toBeCloseTo(-140, 9);
  });

  it('nothing is known without a track or a profile', () => {
    expect(landingPosts(field, undefined, profile)).toEqual([]);
    expect(landingPosts(field, plan, [])).toEqual([]);
  });

  it('walks along a line and stays at its end', () => {
    const line = [
      { x: 0, y: 0 },
      { x: 3, y: 4 },
      { x: 3, y: 10 },
    ];
    expect(along(line, 2.5)).toEqual({ x: 1.5, y: 2 });
    expect(along(line, 8)).toEqual({ x: 3, y: 7 });
    expect(along(line, 99)).toEqual({ x: 3, y: 10 });
    expect(along([], 1)).toBeUndefined();
  });
});
