import type { Body, Control, LiftingSurface, ModelDescription, Station } from '../app/wire';
import type { Spot } from './planGeometry';

/** A point of the model in metres: x aft, y to starboard, z up. */
export type Place = { x: number; y: number; z: number };

export type ViewName = 'plan' | 'side' | 'front';

/** A closed outline in one view, metres; `up` is up on the page. */
export type Outline = { kind: 'surface' | 'control' | 'body' | 'wheel'; name: string; spots: Spot[] };

/** One view: outlines from the back of the drawing to its front. */
export type View = { name: ViewName; outlines: Outline[] };

const radians = (degrees: number): number => (degrees * Math.PI) / 180;

/** How each view lays the model on the page: to the right, and up. */
const onView: Record<ViewName, (p: Place) => Spot> = {
  plan: (p) => ({ x: p.x, y: p.y }),
  side: (p) => ({ x: p.x, y: p.z }),
  front: (p) => ({ x: p.y, y: p.z }),
};

export function project(view: ViewName, p: Place): Spot {
  return onView[view](p);
}

/** Smallest convex outline around some spots, in turning order; fewer than three distinct spots stay as they are. */
export function hull(spots: Spot[]): Spot[] {
  const sorted = [...spots].sort((a, b) => a.x - b.x || a.y - b.y);
  const turn = (o: Spot, a: Spot, b: Spot): number => (a.x - o.x) * (b.y - o.y) - (a.y - o.y) * (b.x - o.x);
  const half = (list: Spot[]): Spot[] => {
    const chain: Spot[] = [];
    for (const s of list) {
      while (chain.length > 1 && turn(chain.at(-2) as Spot, chain.at(-1) as Spot, s) <= 1e-12) chain.pop();
      chain.push(s);
    }
    return chain.slice(0, -1);
  };
  return sorted.length < 3 ? sorted : [...half(sorted), ...half(sorted.reverse())];
}

/** Greatest thickness over chord, as far as the section says it; a thin guess for drawing only otherwise. */
export function thicknessOf(station: Station): number {
  const { thicknessRatio, designation } = station.section ?? {};
  if (thicknessRatio !== undefined) return thicknessRatio;
  return designation && /^\d{4}$/.test(designation) ? Number(designation.slice(2)) / 100 : 0.06;
}

/** True when the surface also stands on the port side: as said, else all but a fin in the plane of symmetry. */
export function isMirrored(surface: LiftingSurface): boolean {
  if (surface.mirrored !== undefined) return surface.mirrored;
  const inPlane = (surface.stations ?? []).every((s) => Math.abs(s.leadingEdgeYMeters ?? 0) < 1e-6);
  return !(surface.role === 'SURFACE_ROLE_FIN' && inPlane);
}

/** One cut through a surface: leading edge, chord and how it lies. */
type Cut = { place: Place; chord: number; angle: number; thickness: number };

function cutOf(station: Station, incidence: number): Cut {
  return {
    place: {
      x: station.leadingEdgeXMeters ?? 0,
      y: station.leadingEdgeYMeters ?? 0,
      z: station.leadingEdgeZMeters ?? 0,
    },
    chord: station.chordMeters ?? 0,
    angle: radians(incidence + (station.twistDegrees ?? 0)),
    thickness: thicknessOf(station),
  };
}

/** Cuts of a surface at its stations, root first. */
export function cutsOf(surface: LiftingSurface): Cut[] {
  const incidence = surface.incidenceDegrees?.value ?? 0;
  return (surface.stations ?? []).map((s) => cutOf(s, incidence));
}

/** Unit normal of the panel between two cuts, in the plane across the model. */
function normalOf(a: Cut, b: Cut): { y: number; z: number } {
  const [dy, dz] = [b.place.y - a.place.y, b.place.z - a.place.z];
  const size = Math.hypot(dy, dz) || 1;
  return { y: -dz / size, z: dy / size };
}

/** The point of a cut at a share of its chord, lifted off the chord line. */
function pointOf(cut: Cut, share: number, lift: number, normal: { y: number; z: number }): Place {
  const along = share * cut.chord * Math.cos(cut.angle);
  const off = lift * cut.chord - share * cut.chord * Math.sin(cut.angle);
  return { x: cut.place.x + along, y: cut.place.y + off * normal.y, z: cut.place.z + off * normal.z };
}

/** The corners by which a cut shows in every view: nose, tail, and its thickest place above and below. */
function cornersOf(cut: Cut, normal: { y: number; z: number }): Place[] {
  const half = cut.thickness / 2;
  return [
    pointOf(cut, 0, 0, normal),
    pointOf(cut, 0.3, half, normal),
    pointOf(cut, 1, 0, normal),
    pointOf(cut, 0.3, -half, normal),
  ];
}

const port = (p: Place): Place => ({ ...p, y: -p.y });

/** Every panel of a surface as a cloud of corners, both sides when mirrored. */
function panelsOf(surface: LiftingSurface): Place[][] {
  const cuts = cutsOf(surface);
  const panels = cuts.slice(1).map((b, i) => {
    const a = cuts[i] as Cut;
    const normal = normalOf(a, b);
    return [...cornersOf(a, normal), ...cornersOf(b, normal)];
  });
  return isMirrored(surface) ? [...panels, ...panels.map((p) => p.map(port))] : panels;
}

/** Distance of each cut from the root along the surface, as a share of the half span. */
function sharesOf(cuts: Cut[]): number[] {
  const lengths = [0];
  for (const [i, b] of cuts.slice(1).entries()) {
    const a = cuts[i] as Cut;
    lengths.push((lengths[i] ?? 0) + Math.hypot(b.place.y - a.place.y, b.place.z - a.place.z));
  }
  const all = lengths.at(-1) || 1;
  return lengths.map((l) => l / all);
}

/** The cut at a share of the half span, straight between its neighbours. */
export function cutAt(cuts: Cut[], share: number): Cut | undefined {
  const shares = sharesOf(cuts);
  const end = shares.findIndex((s, i) => i > 0 && s >= share - 1e-9);
  const [a, b] = [cuts[end - 1], cuts[end]];
  if (!a || !b) return undefined;
  const [from, to] = [shares[end - 1] ?? 0, shares[end] ?? 1];
  const t = to === from ? 0 : (share - from) / (to - from);
  const mix = (p: number, q: number): number => p + t * (q - p);
  return {
    place: {
      x: mix(a.place.x, b.place.x),
      y: mix(a.place.y, b.place.y),
      z: mix(a.place.z, b.place.z),
    },
    chord: mix(a.chord, b.chord),
    angle: mix(a.angle, b.angle),
    thickness: mix(a.thickness, b.thickness),
  };
}

/** A hinged part as corners: along the hinge outboard, back along the trailing edge. */
export function controlCorners(surface: LiftingSurface, control: Control): Place[] {
  const cuts = cutsOf(surface);
  const [from, to] = [control.innerSpanRatio ?? 0, control.outerSpanRatio ?? 1];
  const between = sharesOf(cuts).filter((s) => s > from && s < to);
  const parts = [from, ...between, to].map((s) => cutAt(cuts, s)).filter((c) => c !== undefined);
  const [first, last] = [cuts[0], cuts.at(-1)];
  if (!first || !last || parts.length < 2) return [];
  const normal = normalOf(first, last);
  const hinge = 1 - (control.chordRatio ?? 0);
  return [
    ...parts.map((c) => pointOf(c, hinge, 0, normal)),
    ...parts.reverse().map((c) => pointOf(c, 1, 0, normal)),
  ];
}

/** Corners around one cross section of a body. */
function ringOf(body: Body, index: number, side: number): Place[] {
  const s = body.stations?.[index] ?? {};
  const [w, h] = [(s.widthMeters ?? 0) / 2, (s.heightMeters ?? 0) / 2];
  const turns = body.squareSided ? [45, 135, 225, 315] : Array.from({ length: 24 }, (_, i) => i * 15);
  const reach = body.squareSided ? Math.SQRT2 : 1;
  return turns.map((t) => ({
    x: s.xMeters ?? 0,
    y: side * (body.yMeters ?? 0) + w * reach * Math.cos(radians(t)),
    z: (s.centerZMeters ?? 0) + h * reach * Math.sin(radians(t)),
  }));
}

/** Sides on which a body stands. */
const sidesOf = (body: Body): number[] => (body.mirrored ? [1, -1] : [1]);

/** Outline of a body: along its stations from above and from the side, around them all from the front. */
export function bodyOutlines(body: Body, view: ViewName): Spot[][] {
  const stations = body.stations ?? [];
  return sidesOf(body).map((side) => {
    const rings = stations.map((_, i) => ringOf(body, i, side).map((p) => project(view, p)));
    if (view === 'front') return hull(rings.flat());
    const edge = (pick: (...values: number[]) => number): Spot[] =>
      rings.map((r) => ({ x: r[0]?.x ?? 0, y: pick(...r.map((s) => s.y)) }));
    return [...edge(Math.max), ...edge(Math.min).reverse()];
  });
}

const round = (x: number, y: number, r: number): Spot[] =>
  Array.from({ length: 24 }, (_, i) => ({
    x: x + r * Math.cos(radians(i * 15)),
    y: y + r * Math.sin(radians(i * 15)),
  }));

const box = (x: number, y: number, w: number, h: number): Spot[] => [
  { x: x - w / 2, y: y - h / 2 },
  { x: x + w / 2, y: y - h / 2 },
  { x: x + w / 2, y: y + h / 2 },
  { x: x - w / 2, y: y + h / 2 },
];

type Wheel = NonNullable<NonNullable<ModelDescription['gear']>['wheels']>[number];

/** A wheel seen in a view. */
function wheelOutline(wheel: Wheel, view: ViewName): Spot[] {
  const at = project(view, { x: wheel.xMeters ?? 0, y: wheel.yMeters ?? 0, z: wheel.zMeters ?? 0 });
  const [d, w] = [wheel.diameterMeters ?? 0, wheel.widthMeters ?? 0];
  if (view === 'side') return round(at.x, at.y, d / 2);
  return view === 'plan' ? box(at.x, at.y, d, w) : box(at.x, at.y, w, d);
}

/** Surface of a closed outline in square metres. */
export function areaOf(spots: Spot[]): number {
  return Math.abs(
    spots.reduce((sum, a, i) => {
      const b = spots[(i + 1) % spots.length] ?? a;
      return sum + (a.x * b.y - b.x * a.y) / 2;
    }, 0),
  );
}

/** Area of a control as it shows in a view. */
const shownArea = (corners: Place[], view: ViewName): number => areaOf(corners.map((p) => project(view, p)));

/** Controls of a surface in a view, where they show their face rather than their edge. */
function controlOutlines(surface: LiftingSurface, view: ViewName): Outline[] {
  if (view === 'front') return [];
  return (surface.controls ?? []).flatMap((control) => {
    const corners = controlCorners(surface, control);
    const most = Math.max(shownArea(corners, 'plan'), shownArea(corners, 'side'));
    if (shownArea(corners, view) < Math.max(1e-4, most / 3)) return [];
    const both = isMirrored(surface) && view === 'plan' ? [corners, corners.map(port)] : [corners];
    return both.map((list): Outline => ({
      kind: 'control',
      name: control.name ?? '',
      spots: list.map((p) => project(view, p)),
    }));
  });
}

/** All outlines of one view, those behind first. */
export function viewOf(model: ModelDescription, name: ViewName): View {
  const wheels = (model.gear?.wheels ?? []).map((w): Outline => ({
    kind: 'wheel',
    name: w.name ?? '',
    spots: wheelOutline(w, name),
  }));
  const bodies = (model.bodies ?? []).flatMap((b) =>
    bodyOutlines(b, name).map((spots): Outline => ({ kind: 'body', name: b.name ?? '', spots })),
  );
  const surfaces = (model.surfaces ?? []).map((s) => [
    ...panelsOf(s).map((p): Outline => ({
      kind: 'surface',
      name: s.name ?? '',
      spots: hull(p.map((c) => project(name, c))),
    })),
    ...controlOutlines(s, name),
  ]);
  return { name, outlines: [...wheels, ...bodies, ...surfaces.flat()] };
}

/** Radius of a ball that holds as much as a tank, metres. */
export function ballRadius(liters: number): number {
  return Math.cbrt((3 * liters) / 1000 / (4 * Math.PI));
}

/** Where on a wing the local chord equals the mean chord: its leading edge, or undefined when nowhere. */
export function meanChordPlace(surface: LiftingSurface, chord: number): Place | undefined {
  const cuts = cutsOf(surface);
  for (const [i, b] of cuts.slice(1).entries()) {
    const a = cuts[i] as Cut;
    if ((a.chord - chord) * (b.chord - chord) > 0) continue;
    const t = a.chord === b.chord ? 0 : (a.chord - chord) / (a.chord - b.chord);
    const mix = (p: number, q: number): number => p + t * (q - p);
    return { x: mix(a.place.x, b.place.x), y: mix(a.place.y, b.place.y), z: mix(a.place.z, b.place.z) };
  }
  return undefined;
}
