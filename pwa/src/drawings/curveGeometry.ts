import { toShown, type UnitChoice } from '../app/units';
import type { CurvePoint, ReportCurve } from '../app/wire';
import type { Spot } from './planGeometry';
import { niceStep } from './stripGeometry';

/** One line in shown units, with the outline of its band where it has one. */
export type Line = { name: string; spots: Spot[]; band: Spot[]; dash: string };

/** A curve in shown units, with the range of both axes. */
export type Graph = {
  lines: Line[];
  marks: (Spot & { name: string })[];
  x: Axis;
  y: Axis;
};

/** Range, marks and step of one axis. */
export type Axis = { low: number; high: number; step: number; marks: number[] };

/** Dash patterns in their order; the first line is whole. */
const dashes = ['', '9 5', '2 5', '14 4 2 4', '5 3', '1 3'];

const finite = (p: CurvePoint): boolean => Number.isFinite(p.x ?? 0) && Number.isFinite(p.y ?? 0);

/** The outline of the band of consecutive points that have both ends; a point without them ends it. */
export function bandOutline(points: (Spot & { low?: number; high?: number })[]): Spot[] {
  const run = points.filter((p) => p.low !== undefined && p.high !== undefined);
  if (run.length < 2) return [];
  return [
    ...run.map((p) => ({ x: p.x, y: p.high ?? p.y })),
    ...run.map((p) => ({ x: p.x, y: p.low ?? p.y })).reverse(),
  ];
}

/** An axis of round marks around some values: a lone value gets room, and a range that nearly reaches zero begins there. */
export function axisOf(values: number[], count: number): Axis {
  const good = values.filter(Number.isFinite);
  let [low, high] = good.length > 0 ? [Math.min(...good), Math.max(...good)] : [0, 1];
  const span = high - low;
  if (span < 1e-12 * Math.max(1, Math.abs(high))) {
    const room = Math.abs(high) * 0.1 || 1;
    [low, high] = [low - room, high + room];
  } else if (low > 0 && low < 0.5 * span) low = 0;
  else if (high < 0 && -high < 0.5 * span) high = 0;
  const step = niceStep(high - low, count);
  const [first, last] = [Math.floor(low / step + 1e-9), Math.ceil(high / step - 1e-9)];
  const marks = Array.from({ length: last - first + 1 }, (_, i) =>
    Number(((first + i) * step).toPrecision(12)),
  );
  return { low: first * step, high: last * step, step, marks };
}

/** Brings a curve into the units a person reads, with axes; undefined when it has nothing to draw. */
export function graphOf(
  curve: ReportCurve,
  units: UnitChoice,
  count: { x: number; y: number },
): Graph | undefined {
  const sx = (v: number | undefined): number => toShown(v ?? 0, curve.xUnit ?? '1', units);
  const sy = (v: number | undefined): number => toShown(v ?? 0, curve.yUnit ?? '1', units);
  const lines = (curve.series ?? []).map((s, i): Line => {
    const points = (s.points ?? []).filter(finite).map((p) => ({
      x: sx(p.x),
      y: sy(p.y),
      ...(p.low === undefined ? {} : { low: sy(p.low) }),
      ...(p.high === undefined ? {} : { high: sy(p.high) }),
    }));
    return {
      name: s.name ?? '',
      spots: points.map(({ x, y }) => ({ x, y })),
      band: bandOutline(points),
      dash: dashes[i % dashes.length] ?? '',
    };
  });
  const shown = lines.filter((l) => l.spots.length > 0);
  if (shown.length === 0) return undefined;
  const marks = (curve.marks ?? []).map((m) => ({ name: m.name ?? '', x: sx(m.x), y: sy(m.y) }));
  const all = [...shown.flatMap((l) => [...l.spots, ...l.band]), ...marks];
  return {
    lines: shown,
    marks,
    x: axisOf(
      all.map((s) => s.x),
      count.x,
    ),
    y: axisOf(
      all.map((s) => s.y),
      count.y,
    ),
  };
}

/** A label that wants to stand beside a spot. */
export type Label = Spot & { text: string };
/** Where a label came to stand: its middle, and the end of the lead to its spot where that is not near. */
export type Placed = Label & { atX: number; atY: number; lead?: Spot };

type Rect = { left: number; right: number; top: number; bottom: number };

const overlap = (a: Rect, b: Rect): number =>
  Math.max(0, Math.min(a.right, b.right) - Math.max(a.left, b.left)) *
  Math.max(0, Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top));

/** How many spots of the lines run under a box. */
const covered = (r: Rect, ink: Spot[]): number =>
  ink.filter((s) => s.x > r.left - 2 && s.x < r.right + 2 && s.y > r.top && s.y < r.bottom).length;

const outside = (r: Rect, frame: Rect): number =>
  Math.max(0, frame.left - r.left) +
  Math.max(0, r.right - frame.right) +
  Math.max(0, frame.top - r.top) +
  Math.max(0, r.bottom - frame.bottom);

/** Boxes around a spot where a label may stand, nearest first, with their distance; pushed sideways into the frame. */
function candidates(label: Label, wide: number, high: number, frame: Rect): { rect: Rect; away: number }[] {
  const found: { rect: Rect; away: number }[] = [];
  const put = (wanted: number, y: number, away: number): void => {
    const x = Math.max(frame.left + wide / 2, Math.min(frame.right - wide / 2, wanted));
    const rect = { left: x - wide / 2, right: x + wide / 2, top: y - high / 2, bottom: y + high / 2 };
    found.push({ rect, away });
  };
  for (let away = 8; away <= 88; away += 8) {
    const [beside, over] = [away + wide / 2, away + high / 2];
    for (const dy of [-over, over])
      for (const dx of [0, -wide / 2, wide / 2]) put(label.x + dx, label.y + dy, away);
    for (const dx of [beside, -beside])
      for (const dy of [0, -over, over]) put(label.x + dx, label.y + dy, away);
  }
  return found;
}

/** The spot of a box nearest to its label's spot, when that is too far to be plain without a lead. */
function leadOf(label: Label, r: Rect): { lead?: Spot } {
  const x = Math.min(r.right, Math.max(r.left, label.x));
  const y = Math.min(r.bottom, Math.max(r.top, label.y));
  return Math.hypot(x - label.x, y - label.y) > 18 ? { lead: { x, y } } : {};
}

/** Puts each label where it covers least: no other label, nothing outside the frame, little ink; nearer is better. */
export function placeLabels(
  labels: Label[],
  frame: Rect,
  ink: Spot[],
  letter: number,
  high: number,
): Placed[] {
  const taken: Rect[] = [];
  return labels.map((label) => {
    const list = candidates(label, label.text.length * letter, high, frame);
    const cost = ({ rect, away }: (typeof list)[number]): number =>
      1000 * outside(rect, frame) +
      50 * taken.reduce((sum, t) => sum + overlap(rect, t), 0) +
      8 * covered(rect, ink) +
      away;
    const costs = list.map(cost);
    const { rect } = list[costs.indexOf(Math.min(...costs))] as (typeof list)[number];
    taken.push({ ...rect, left: rect.left - 5, right: rect.right + 5 });
    const [atX, atY] = [(rect.left + rect.right) / 2, (rect.top + rect.bottom) / 2];
    return { ...label, atX, atY, ...leadOf(label, rect) };
  });
}

/** Letters instead of names where the longest name of a mark would fill the drawing; empty where names fit. */
export function lettersFor(names: string[], room: number): string[] {
  if (names.every((n) => n.length <= room)) return [];
  return names.map((_, i) => String.fromCharCode(65 + (i % 26)));
}

/** Spots along lines close enough together that no label slips between them. */
export function inkOf(lines: Spot[][], apart: number): Spot[] {
  return lines.flatMap((spots) =>
    spots.flatMap((b, i) => {
      const a = spots[i - 1];
      if (!a) return [b];
      const n = Math.min(200, Math.max(1, Math.ceil(Math.hypot(b.x - a.x, b.y - a.y) / apart)));
      return Array.from({ length: n }, (_, k) => {
        const t = (k + 1) / n;
        return { x: a.x + t * (b.x - a.x), y: a.y + t * (b.y - a.y) };
      });
    }),
  );
}
