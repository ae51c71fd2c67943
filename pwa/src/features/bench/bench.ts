import { benchWords } from '../../app/benchWords';
import { numberText, show, type UnitChoice } from '../../app/units';
import type { BenchItem, Report } from '../../app/wire';

export type BenchGroup = { name: string; items: BenchItem[] };

/** Points of the list by their headings, in the order of the report. */
export function groupsOf(report: Report | undefined): BenchGroup[] {
  const groups: BenchGroup[] = [];
  for (const item of report?.benchItems ?? []) {
    const name = item.group ?? '';
    const last = groups.at(-1);
    if (last?.name === name) last.items.push(item);
    else groups.push({ name, items: [item] });
  }
  return groups;
}

/** Whether a point bears on a finding that fails or is unknown. */
export function isOpen(report: Report | undefined, item: BenchItem): boolean {
  return (item.findingIds ?? []).some((id) => {
    const verdict = report?.findings?.find((f) => f.id === id)?.verdict;
    return verdict === 'VERDICT_FAILS' || verdict === 'VERDICT_UNKNOWN';
  });
}

/** Below this a length in metres is read in millimetres, a mass in kilograms in grams, and a volume in litres in millilitres. */
const small = 0.1;
/** From here on a time is read in minutes and seconds. */
const spoken = 90;

/** A figure as it is read at the bench or at the strip. */
export function figureText(value: number, unit: string, choice: UnitChoice): string {
  if (unit === 's' && value >= spoken) {
    const whole = Math.round(value);
    return benchWords.minutes(`${String(Math.floor(whole / 60))}:${String(whole % 60).padStart(2, '0')}`);
  }
  const thousandth = Math.abs(value) < small && value !== 0;
  if (thousandth && unit === 'm' && choice.length === 'm') return `${numberText(value * 1000)}\u00a0mm`;
  if (thousandth && unit === 'kg' && choice.mass === 'kg') return `${numberText(value * 1000)}\u00a0g`;
  if (thousandth && (unit === 'l' || unit === 'L')) return `${numberText(value * 1000)}\u00a0ml`;
  return show(value, unit, choice);
}

/** The ends of the figure wanted; undefined where a state is wanted. */
export function wantedFigure(item: BenchItem, choice: UnitChoice): string | undefined {
  const text = (value: number): string => figureText(value, item.unit ?? '', choice);
  const { low, high } = item;
  if (low !== undefined && high !== undefined)
    return low === high ? text(low) : benchWords.between(text(low), text(high));
  if (low !== undefined) return benchWords.atLeast(text(low));
  if (high !== undefined) return benchWords.atMost(text(high));
  return undefined;
}

/** The line under the heading of the bench list. */
export function benchLine(report: Report | undefined): string {
  const items = report?.benchItems ?? [];
  return benchWords.benchLine(items.length, items.filter((item) => isOpen(report, item)).length);
}

/** The line under the heading of the cards. */
export function cardsLine(report: Report | undefined): string {
  return benchWords.cardsLine((report?.cards ?? []).map((card) => card.title ?? ''));
}

/** Prints one part of the page alone; the mark on the root is what the print rules look at. */
export function printPart(part: 'bench' | 'cards'): void {
  document.documentElement.dataset['print'] = part;
  addEventListener(
    'afterprint',
    () => {
      delete document.documentElement.dataset['print'];
    },
    { once: true },
  );
  print();
}
