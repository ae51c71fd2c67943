import type { Report } from '../app/wire';

/** One part of the drag, with its share of all parts. */
export type Part = { name: string; value: number; share: number };

const stem = 'drag.part.';

/** Parts of the drag, largest first. A part without a number, or below zero, is left out of the shares. */
export function partsOf(report: Report | undefined): Part[] {
  const parts = (report?.quantities ?? [])
    .filter((q) => q.id?.startsWith(stem) && q.value !== undefined && q.value >= 0)
    .map((q) => ({ name: (q.id ?? '').slice(stem.length), value: q.value ?? 0 }));
  const all = parts.reduce((sum, p) => sum + p.value, 0);
  return parts
    .map((p) => ({ ...p, share: all > 0 ? p.value / all : 0 }))
    .sort((a, b) => b.value - a.value || a.name.localeCompare(b.name));
}

/** Drag coefficient clean in flight, where the parts add up to that of the launch and it differs; else undefined. */
export function cleanBeside(report: Report | undefined, sum: number): number | undefined {
  const number = (id: string): number | undefined => report?.quantities?.find((q) => q.id === id)?.value;
  const [launch, clean] = [number('drag.zero_lift_launch'), number('drag.zero_lift')];
  if (launch === undefined || clean === undefined || sum <= 0) return undefined;
  const near = (a: number, b: number): boolean => Math.abs(a - b) < 0.01 * sum;
  return near(sum, launch) && !near(launch, clean) ? clean : undefined;
}
