import { describe, expect, it } from 'vitest';
import {
  columnText,
  defaultUnits,
  fromShown,
  numberText,
  parseNumber,
  show,
  showApart,
  steppedText,
  toShown,
  type UnitChoice,
} from '../../src/app/units';

const imperial: UnitChoice = { speed: 'mph', length: 'ft', mass: 'lb', force: 'lbf' };

describe('conversion', () => {
  // Exact by definition: international foot 0.3048 m, pound 0.45359237 kg, nautical mile 1852 m, mile 1609.344 m.
  it.each([
    [0.3048, 'm', imperial, 1],
    [0.45359237, 'kg', imperial, 1],
    [4.4482216152605, 'N', imperial, 1],
    [1609.344 / 3600, 'm/s', imperial, 1],
    [10, 'm/s', { ...defaultUnits, speed: 'km/h' } as UnitChoice, 36],
    [1852 / 3600, 'm/s', { ...defaultUnits, speed: 'kt' } as UnitChoice, 1],
    [9.80665, 'N', { ...defaultUnits, force: 'kgf' } as UnitChoice, 1],
    [101325, 'Pa', defaultUnits, 1013.25],
    [12, 'deg', imperial, 12],
  ])('%f %s', (si, unit, choice, expected) => {
    expect(toShown(si, unit, choice)).toBeCloseTo(expected, 10);
    expect(fromShown(expected, unit, choice)).toBeCloseTo(si, 10);
  });
});

describe('text', () => {
  it.each([
    [14.2345, 'm/s', '14.2\u00a0m/s'],
    [0.0621, '1', '0.0621'],
    [0.0000178455, 'Pa s', '0.0000178\u00a0Pa s'],
    [1e-16, 'm', '0\u00a0m'],
    [-Math.PI / 4, 'rad', '\u221245°'],
    [0.6958, 'm2', '0.696\u00a0m²'],
    [1312.4, 'm', '1312\u00a0m'],
    [-1.6, 'm', '\u22121.6\u00a0m'],
    [-0, 'm', '0\u00a0m'],
    [240, 'deg', '240°'],
    [101325, 'Pa', '1013\u00a0hPa'],
    [18, 'degC', '18\u00a0°C'],
  ])('%f %s', (value, unit, expected) => {
    expect(show(value, unit, defaultUnits)).toBe(expected);
  });

  it('shows an absent value as a dash and never as zero', () => {
    expect(show(undefined, 'm', defaultUnits)).toBe('\u2013');
    expect(show(Number.NaN, 'm', defaultUnits)).toBe('\u2013');
  });

  it('keeps three digits that count', () => {
    expect([0.1234, 1.234, 12.34, 123.4].map(numberText)).toEqual(['0.123', '1.23', '12.3', '123']);
  });
});

describe('numbers of an axis', () => {
  it.each([
    [0.3, 0.1, '0.3'],
    [1, 0.2, '1.0'],
    [-2, 1, '\u22122'],
    [1e-17, 0.1, '0.0'],
    [1200, 200, '1200'],
    [3.2146, 0.001, '3.215'],
  ])('%f in steps of %f', (value, step, text) => {
    expect(steppedText(value, step)).toBe(text);
  });
});

describe('typed numbers', () => {
  it.each([
    ['7.3', { value: 7.3, wrong: false }],
    ['7,3', { value: 7.3, wrong: false }],
    ['\u22122', { value: -2, wrong: false }],
    ['  ', { wrong: false }],
    ['7.3 kg', { wrong: true }],
    ['1.2.3', { wrong: true }],
    ['Infinity', { wrong: true }],
  ])('%s', (text, expected) => {
    expect(parseNumber(text)).toEqual(expected);
  });
});

describe('numbers of a column', () => {
  it('differ where the values do, however little the column spans', () => {
    const margin = [0.10988516, 0.11007211, 0.11026637, 0.11161304];
    const texts = margin.map((v) => columnText(v, margin));
    expect(texts).toEqual(['0.10989', '0.11007', '0.11027', '0.11161']);
    expect(new Set(texts).size).toBe(margin.length);
  });

  it('are as everywhere where the column spans much, or nothing', () => {
    expect(columnText(14.23, [3.1, 14.23])).toBe('14.2');
    expect(columnText(0.08, [0.08, 0.08])).toBe('0.08');
    expect(columnText(5, [])).toBe('5');
  });
});

describe('two values side by side', () => {
  it('have as many digits as tell them apart', () => {
    const pair = (a: number, b: number): string[] => [
      showApart(a, b, 'm', defaultUnits),
      showApart(b, a, 'm', defaultUnits),
    ];
    expect(pair(8.5, 12)).toEqual(['8.5\u00a0m', '12\u00a0m']);
    expect(pair(45.01, 45.04)).toEqual(['45.010\u00a0m', '45.040\u00a0m']);
    expect(pair(7, 7)).toEqual(['7\u00a0m', '7\u00a0m']);
    expect(showApart(7, undefined, 'm', defaultUnits)).toBe('7\u00a0m');
    expect(showApart(undefined, 7, 'm', defaultUnits)).toBe('\u2013');
  });
});
