import type { ModelDescription } from '../app/wire';
import { words } from '../app/words';
import { cutsOf, isMirrored } from './threeViewGeometry';

/** One part of the model with its place (x, y, z) and named measures, all metres. */
export type Measured = {
  name: string;
  place: (number | undefined)[];
  measures: [string, number | undefined][];
};

const w = words.drawing.threeView;

function surfaceRows(model: ModelDescription): Measured[] {
  return (model.surfaces ?? []).flatMap((s) => {
    const cuts = cutsOf(s);
    const [root, tip] = [cuts[0], cuts.at(-1)];
    if (!root || !tip) return [];
    const half = Math.hypot(tip.place.y - root.place.y, tip.place.z - root.place.z);
    const inPlane = Math.abs(root.place.y) < 1e-6;
    const span = isMirrored(s) && inPlane ? 2 * tip.place.y : half;
    return [
      {
        name: s.name ?? '',
        place: [root.place.x, root.place.y, root.place.z],
        measures: [
          [w.span, span],
          [w.rootChord, root.chord],
          [w.tipChord, tip.chord],
        ],
      },
    ];
  });
}

function bodyRows(model: ModelDescription): Measured[] {
  return (model.bodies ?? []).map((b) => {
    const xs = (b.stations ?? []).map((s) => s.xMeters ?? 0);
    const most = (pick: 'widthMeters' | 'heightMeters'): number =>
      Math.max(0, ...(b.stations ?? []).map((s) => s[pick] ?? 0));
    return {
      name: b.name ?? '',
      place: [
        xs.length > 0 ? Math.min(...xs) : undefined,
        b.yMeters ?? 0,
        b.stations?.[0]?.centerZMeters ?? 0,
      ],
      measures: [
        [w.length, xs.length > 0 ? Math.max(...xs) - Math.min(...xs) : undefined],
        [w.width, most('widthMeters')],
        [w.height, most('heightMeters')],
      ],
    };
  });
}

/** Every drawn part of a model with its measures, for the table. */
export function measuresOf(model: ModelDescription): Measured[] {
  const wheels = (model.gear?.wheels ?? []).map((p): Measured => ({
    name: w.wheel(p.name ?? ''),
    place: [p.xMeters, p.yMeters, p.zMeters],
    measures: [[w.diameter, p.diameterMeters]],
  }));
  const tanks = (model.mass?.tanks ?? []).map((t): Measured => ({
    name: w.tankNamed(t.name ?? ''),
    place: [t.xMeters, t.yMeters, t.zMeters],
    measures: [],
  }));
  const engines = (model.engines ?? []).map((e): Measured => ({
    name: e.name ?? '',
    place: [e.xMeters, e.yMeters, e.zMeters],
    measures: [[w.diameter, e.nozzleDiameterMeters ?? e.discDiameterMeters]],
  }));
  return [...surfaceRows(model), ...bodyRows(model), ...wheels, ...tanks, ...engines];
}
