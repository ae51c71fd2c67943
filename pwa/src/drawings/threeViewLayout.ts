import type { Spot } from './planGeometry';
import type { ViewName } from './threeViewGeometry';

/** Left, right, low and high of some spots; undefined when there are none. */
export type Extent = { left: number; right: number; low: number; high: number };

export function extentOf(spots: Spot[]): Extent | undefined {
  const good = spots.filter((s) => Number.isFinite(s.x) && Number.isFinite(s.y));
  if (good.length === 0) return undefined;
  const xs = good.map((s) => s.x);
  const ys = good.map((s) => s.y);
  return { left: Math.min(...xs), right: Math.max(...xs), low: Math.min(...ys), high: Math.max(...ys) };
}

/** Where a view's metres lie on the page: x grows to the right, the view's up goes up. */
export type Frame = { view: ViewName; left: number; top: number; extent: Extent };

export type Layout = { perMeter: number; width: number; height: number; frames: Frame[] };

const gap = 26;
const edge = 12;

/** Places the three views at one scale: one below the other on a phone, side and front beside the plan where there is room. */
export function layOut(extents: Record<ViewName, Extent>, width: number): Layout {
  const wide = (e: Extent): number => Math.max(e.right - e.left, 0.05);
  const tall = (e: Extent): number => Math.max(e.high - e.low, 0.02);
  const { plan, side, front } = extents;
  const beside = width >= 640;
  const across = beside ? wide(plan) + Math.max(wide(side), wide(front)) : Math.max(wide(plan), wide(front));
  const perMeter = Math.min(
    (width - 2 * edge - (beside ? gap : 0)) / across,
    beside ? 620 / tall(plan) : 1e9,
  );
  const size = (e: Extent): { w: number; h: number } => ({ w: wide(e) * perMeter, h: tall(e) * perMeter });
  const frames: Frame[] = [];
  let top = edge + gap;
  const put = (view: ViewName, left: number): void => {
    frames.push({ view, left, top, extent: extents[view] });
    top += size(extents[view]).h + gap + 14;
  };
  const middle = (e: Extent): number => (width - size(e).w) / 2;
  put('plan', beside ? edge : middle(plan));
  const planEnd = top;
  if (beside) top = edge + gap;
  const column = edge + size(plan).w + gap;
  put('side', beside ? column : middle(plan) + (side.left - plan.left) * perMeter);
  put('front', beside ? column : middle(front));
  return { perMeter, width, height: Math.max(planEnd, top) - gap + 24, frames };
}

/** A spot of a view on the page. */
export function toFrame(spot: Spot, frame: Frame, perMeter: number): Spot {
  return {
    x: frame.left + (spot.x - frame.extent.left) * perMeter,
    y: frame.top + (frame.extent.high - spot.y) * perMeter,
  };
}
