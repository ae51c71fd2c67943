import { describe, expect, it } from 'vitest';
import type { ReportPath } from '../../src/app/wire';
import {
  areaOf,
  boxAround,
  footprintsOf,
  hectaresOf,
  intoBox,
  thinned,
  unreached,
} from '../../src/drawings/footprintGeometry';

const square = (id: string, side: number): ReportPath => ({
  id,
  points: [
    { xMeters: 0, yMeters: 0 },
    { xMeters: side, yMeters: 0 },
    { xMeters: side, yMeters: side },
    { xMeters: 0, yMeters: side },
  ],
});

describe('footprints', () => {
  const paths = [
    square('area.engine_out', 30),
    square('area.link_loss_50', 10),
    square('area.link_loss_95', 20),
    square('launch.plan', 5),
  ];

  it('come widest first, each told apart by shape and by name', () => {
    const found = footprintsOf(paths);
    expect(found.map((f) => f.id)).toEqual(['area.link_loss_95', 'area.link_loss_50', 'area.engine_out']);
    expect(new Set(found.map((f) => f.texture)).size).toBe(3);
    expect(new Set(found.map((f) => f.dash)).size).toBe(3);
    expect(new Set(found.map((f) => f.name)).size).toBe(3);
  });

  it('that fall into pieces stay one entry of the key', () => {
    const found = footprintsOf([square('area.engine_out.1', 3), square('area.engine_out.2', 4)]);
    expect(found).toHaveLength(1);
    expect(found[0]?.outlines).toHaveLength(2);
  });

  it('that nobody wrote a name for are called by their id, and a line is no area', () => {
    const line: ReportPath = { id: 'area.engine_out', points: [{ xMeters: 0 }, { xMeters: 1 }] };
    expect(footprintsOf([square('area.flyaway_circle', 9), line]).map((f) => f.name)).toEqual([
      'flyaway circle',
    ]);
  });

  it('have the same area whichever way round they run', () => {
    const corners = footprintsOf([square('area.engine_out', 30)])[0]?.outlines[0] ?? [];
    expect(areaOf(corners)).toBe(900);
    expect(areaOf([...corners].reverse())).toBe(900);
    expect(areaOf([])).toBe(0);
    const pieces = footprintsOf([square('area.engine_out.1', 100), square('area.engine_out.2', 200)]);
    expect(pieces.map(hectaresOf)).toEqual([5]);
  });
});

describe('the frame of the plan', () => {
  it('keeps what lies far off at its edge', () => {
    const box = boxAround(
      [
        { x: 0, y: 0 },
        { x: 100, y: 50 },
      ],
      0.2,
    );
    if (!box) throw new Error('no box');
    expect(box).toEqual({ left: -20, right: 120, low: -20, high: 70 });
    expect(intoBox({ x: 900, y: 10 }, box)).toEqual({ x: 120, y: 10 });
    expect(intoBox({ x: 5, y: -900 }, box)).toEqual({ x: 5, y: -20 });
    expect(intoBox({ x: 5, y: 5 }, box)).toEqual({ x: 5, y: 5 });
    expect(boxAround([], 0.2)).toBeUndefined();
  });
});

describe('places out of reach', () => {
  it('are read from the report and thinned so that marks stay apart', () => {
    const path: ReportPath = {
      id: 'reach.none',
      points: Array.from({ length: 50 }, (_, i) => ({ xMeters: i, yMeters: 0 })),
    };
    const spots = unreached([path, square('area.engine_out', 3)]);
    expect(spots).toHaveLength(50);
    const kept = thinned(spots, 10);
    expect(kept.map((s) => s.x)).toEqual([0, 10, 20, 30, 40]);
  });
});
