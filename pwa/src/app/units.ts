/** Values are stored in SI; a person chooses how they are shown. This is the only file that converts. */

export type SpeedUnit = 'm/s' | 'km/h' | 'mph' | 'kt';
export type LengthUnit = 'm' | 'ft';
export type MassUnit = 'kg' | 'lb';
export type ForceUnit = 'N' | 'kgf' | 'lbf';

/** What a person prefers to read. */
export type UnitChoice = { speed: SpeedUnit; length: LengthUnit; mass: MassUnit; force: ForceUnit };

export const defaultUnits: UnitChoice = { speed: 'm/s', length: 'm', mass: 'kg', force: 'N' };

/** SI units in one shown unit: exact by definition of the international yard, pound, nautical mile and standard gravity. */
const siPer: Record<string, number> = {
  'm/s': 1,
  'km/h': 1 / 3.6,
  mph: 0.44704,
  kt: 1852 / 3600,
  m: 1,
  ft: 0.3048,
  kg: 1,
  lb: 0.45359237,
  N: 1,
  kgf: 9.80665,
  lbf: 4.4482216152605,
  hPa: 100,
};

const shownNames: Record<string, string> = {
  '1': '',
  deg: '°',
  rad: '°',
  degC: '°C',
  celsius: '°C',
  C: '°C',
  a: 'years',
  L: 'l',
  '1/min': '/min',
  mm2: 'mm²',
  Pa: 'hPa',
  '1/rad': 'per rad',
  '1/deg': 'per °',
  'deg/s': '°/s',
  'deg/g': '° per g',
  m2: 'm²',
  m3: 'm³',
  'm/s2': 'm/s²',
  'kg/m2': 'kg/m²',
  'kg/m3': 'kg/m³',
  'kg m2': 'kg m²',
};

/** Unit in which a value stored in `si` is shown to this person. */
export function shownUnit(si: string, choice: UnitChoice): string {
  switch (si) {
    case 'm/s':
      return choice.speed;
    case 'm':
      return choice.length;
    case 'kg':
      return choice.mass;
    case 'N':
      return choice.force;
    default:
      return shownNames[si] ?? si;
  }
}

/** SI units in one shown unit; angles computed in radians are shown in degrees. */
function factor(si: string, choice: UnitChoice): number {
  return si === 'rad' ? Math.PI / 180 : (siPer[shownUnit(si, choice)] ?? 1);
}

/** Converts a stored SI value to the shown unit. */
export function toShown(value: number, si: string, choice: UnitChoice): number {
  return value / factor(si, choice);
}

/** Converts a typed value in the shown unit back to SI. */
export function fromShown(value: number, si: string, choice: UnitChoice): number {
  return value * factor(si, choice);
}

/** Below this a number is a rounding error of a zero. */
const nothing = 1e-9;

const format = (options: Intl.NumberFormatOptions): Intl.NumberFormat =>
  new Intl.NumberFormat('en-GB', { ...options, useGrouping: false });

// Making one takes as long as a hundred numbers do, and a report tells hundreds.
const [small, byDecimals] = [
  format({ maximumSignificantDigits: 3 }),
  [0, 1, 2].map((digits) => format({ maximumFractionDigits: digits })),
];

/** Three digits that count, no exponent, true minus sign; whole numbers from 1000. */
export function numberText(value: number): string {
  const size = Math.abs(value);
  if (size < nothing) return '0';
  const decimals = size >= 100 ? 0 : size >= 10 ? 1 : 2;
  return minus((size < 1 ? small : byDecimals[decimals])?.format(value) ?? '');
}

const minus = (text: string): string => text.replace(/^-/, '\u2212');

/** A number with as many decimals as a step of this size needs: marks of an axis, weights on a fine scale. */
export function steppedText(value: number, step: number): string {
  const digits = Math.min(6, Math.max(0, Math.ceil(-Math.log10(step) - 1e-9)));
  return minus((Math.abs(value) < step / 2 ? 0 : value).toFixed(digits));
}

/** A number of a column: with more digits where the column as a whole spans little, so that its lines differ. */
export function columnText(value: number, column: number[]): string {
  const [low, high] = [Math.min(...column), Math.max(...column)];
  const span = high - low;
  const size = Math.max(Math.abs(low), Math.abs(high));
  if (!(span > nothing) || span >= 0.1 * size) return numberText(value);
  return steppedText(value, 10 ** Math.floor(Math.log10(span / 20)));
}

/** Number and unit as one text, e.g. "14.2 m/s", "12.3°". */
export function show(value: number | undefined, si: string, choice: UnitChoice): string {
  if (value === undefined || !Number.isFinite(value)) return '\u2013';
  const unit = shownUnit(si, choice);
  const gap = unit === '' || unit === '°' ? '' : '\u00a0';
  return numberText(toShown(value, si, choice)) + gap + unit;
}

/** As show, with as many digits as tell the value from another one. */
export function showApart(
  value: number | undefined,
  other: number | undefined,
  si: string,
  choice: UnitChoice,
): string {
  const text = show(value, si, choice);
  if (value === undefined || other === undefined || value === other || text !== show(other, si, choice))
    return text;
  const [a, b] = [toShown(value, si, choice), toShown(other, si, choice)];
  return text.replace(numberText(a), columnText(a, [a, b]));
}

/** A typed number: comma or point, empty is absent, anything else is undefined and wrong. */
export function parseNumber(text: string): { value?: number; wrong: boolean } {
  const trimmed = text.trim().replace(',', '.').replace('\u2212', '-');
  if (trimmed === '') return { wrong: false };
  const value = Number(trimmed);
  return Number.isFinite(value) ? { value, wrong: false } : { wrong: true };
}
