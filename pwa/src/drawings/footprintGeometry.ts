import type { ReportPath } from '../app/wire';
import { words } from '../app/words';
import { pathSpots, type Spot } from './planGeometry';

/** How the ground inside an outline is stippled; each differs in shape, so that no colour is needed to tell them apart. */
export type Texture = 'rings' | 'dense' | 'sparse' | 'strokes';

/** Ground on which a model may come down, as one or more closed outlines. */
export type Footprint = { id: string; name: string; texture: Texture; dash: string; outlines: Spot[][] };

type Look = Pick<Footprint, 'name' | 'texture' | 'dash'>;

/** Known outlines, the widest first, so that the narrower lie over them. */
const looks: [id: string, look: Look][] = [
  ['area.link_loss_95', { name: words.plan.linkLoss95, texture: 'sparse', dash: '2 4' }],
  ['area.link_loss_50', { name: words.plan.linkLoss50, texture: 'dense', dash: '' }],
  ['area.engine_out', { name: words.plan.engineOut, texture: 'rings', dash: '9 4' }],
];

/** True for the id itself and for the pieces of an outline that falls apart: "area.engine_out.2". */
const isPiece = (path: ReportPath, id: string): boolean =>
  path.id === id || (path.id ?? '').startsWith(`${id}.`);

/** An outline that no look is written for, called by its id. */
function strange(path: ReportPath): Footprint {
  const id = path.id ?? '';
  const name = id.replace(/^area\./, '').replace(/[._]/g, ' ');
  return { id, name, texture: 'strokes', dash: '6 2 1 2', outlines: [pathSpots(path)] };
}

/** Footprints of a report, the widest first; outlines of fewer than three corners are left out. */
export function footprintsOf(paths: ReportPath[]): Footprint[] {
  const areas = paths.filter((p) => p.id?.startsWith('area.') && (p.points?.length ?? 0) > 2);
  const known = looks.flatMap(([id, look]): Footprint[] => {
    const outlines = areas.filter((p) => isPiece(p, id)).map(pathSpots);
    return outlines.length > 0 ? [{ id, ...look, outlines }] : [];
  });
  const others = areas.filter((p) => !looks.some(([id]) => isPiece(p, id)));
  return [...others.map(strange), ...known];
}

/** Places from which no landing area is reached with the engine stopped. */
export function unreached(paths: ReportPath[]): Spot[] {
  return paths.filter((p) => isPiece(p, 'reach.none')).flatMap(pathSpots);
}

/** Some of the spots, so that no two marks lie closer than `apart`. */
export function thinned(spots: Spot[], apart: number): Spot[] {
  const kept: Spot[] = [];
  for (const s of spots) if (kept.every((k) => Math.hypot(k.x - s.x, k.y - s.y) >= apart)) kept.push(s);
  return kept;
}

/** A box on the field. */
export type Box = { left: number; right: number; low: number; high: number };

/** The box around some spots, wider on every side by a share of its longer side. */
export function boxAround(spots: Spot[], share: number): Box | undefined {
  if (spots.length === 0) return undefined;
  const [xs, ys] = [spots.map((s) => s.x), spots.map((s) => s.y)];
  const [left, right, low, high] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  const more = share * Math.max(right - left, high - low);
  return { left: left - more, right: right + more, low: low - more, high: high + more };
}

/** The nearest place in a box: what lies beyond it does not make the drawing smaller. */
export const intoBox = (s: Spot, box: Box): Spot => ({
  x: Math.min(box.right, Math.max(box.left, s.x)),
  y: Math.min(box.high, Math.max(box.low, s.y)),
});

/** Ground of a footprint, in hectares. */
export const hectaresOf = (f: Footprint): number => f.outlines.reduce((sum, o) => sum + areaOf(o), 0) / 10000;

/** Area inside an outline, in square metres: the sum of the trapezoids under its sides, whichever way round it runs. */
export function areaOf(outline: Spot[]): number {
  const twice = outline.reduce((sum, a, i) => {
    const b = outline[(i + 1) % outline.length] ?? a;
    return sum + a.x * b.y - b.x * a.y;
  }, 0);
  return Math.abs(twice) / 2;
}
