import { describe, expect, it } from 'vitest';
import { defaultUnits } from '../../src/app/units';
import type { BenchItem, Report } from '../../src/app/wire';
import {
  benchLine,
  cardsLine,
  figureText,
  groupsOf,
  isOpen,
  wantedFigure,
} from '../../src/features/bench/bench';

const trap: BenchItem = { id: 'bench.fuel.trap', group: 'Fuel', findingIds: ['fuel.trap', 'fuel.suction'] };
const throwUp: BenchItem = {
  id: 'bench.controls.throw_up',
  group: 'Controls',
  low: 15.7,
  high: 16.3,
  unit: 'deg',
};
const report: Report = {
  benchItems: [throwUp, trap, { id: 'bench.fuel.vent', group: 'Fuel', findingIds: ['fuel.vent'] }],
  findings: [
    { id: 'fuel.trap', verdict: 'VERDICT_HOLDS' },
    { id: 'fuel.suction', verdict: 'VERDICT_FAILS' },
    { id: 'fuel.vent', verdict: 'VERDICT_TIGHT' },
  ],
  cards: [{ id: 'card.taxi', title: 'Taxi runs' }, { title: 'First flight' }],
};

describe('bench list', () => {
  it('stands under its headings in the order of the report', () => {
    expect(groupsOf(report).map((g) => [g.name, g.items.length])).toEqual([
      ['Controls', 1],
      ['Fuel', 2],
    ]);
    expect(groupsOf(undefined)).toEqual([]);
  });

  it('marks points that bear on a finding that fails, and no others', () => {
    expect((report.benchItems ?? []).map((item) => isOpen(report, item))).toEqual([false, true, false]);
    expect(benchLine(report)).toBe(
      '3 points to inspect on this model; 1 of them bear on findings that fail or are unknown.',
    );
    expect(benchLine(undefined)).toContain('describe the model');
  });

  it('writes the ends of a figure, and nothing where a state is wanted', () => {
    expect(wantedFigure(throwUp, defaultUnits)).toBe('15.7° to 16.3°');
    expect(wantedFigure({ low: 2, high: 2, unit: '1' }, defaultUnits)).toBe('2');
    expect(wantedFigure({ high: 0.00129866, unit: 'm' }, defaultUnits)).toBe('at most 1.3\u00a0mm');
    expect(wantedFigure({ low: 0.021875, unit: 'l' }, defaultUnits)).toBe('at least 21.9\u00a0ml');
    expect(wantedFigure({ high: 60, unit: 'C' }, defaultUnits)).toBe('at most 60\u00a0°C');
    expect(wantedFigure({ low: 10, unit: 'kg' }, { ...defaultUnits, mass: 'lb' })).toBe(
      'at least 22\u00a0lb',
    );
    expect(wantedFigure(trap, defaultUnits)).toBeUndefined();
  });
});

describe('cards', () => {
  it('are named in one line', () => {
    expect(cardsLine(report)).toBe('Taxi runs, First flight.');
  });

  it('tell longer times in minutes', () => {
    expect(figureText(653, 's', defaultUnits)).toBe('10:53 min');
    expect(figureText(89.6, 's', defaultUnits)).toBe('89.6\u00a0s');
    expect(figureText(179.7, 's', defaultUnits)).toBe('3:00 min');
    expect(figureText(0, 'm', defaultUnits)).toBe('0\u00a0m');
    expect(figureText(-0.4, 'deg', defaultUnits)).toBe('\u22120.4°');
  });
});
