/** Reads and changes plain JSON by dotted paths ("model.engines.0.staticThrustNewtons"); nothing is changed in place. */

/** The value at a path, or undefined. */
export function getIn(root: unknown, path: string): unknown {
  let at: unknown = root;
  for (const part of path.split('.')) {
    if (at === null || typeof at !== 'object') return undefined;
    at = (at as Record<string, unknown>)[part];
  }
  return at;
}

function branch(node: unknown, next: string): unknown[] | Record<string, unknown> {
  if (Array.isArray(node)) return [...(node as unknown[])];
  if (node !== null && typeof node === 'object') return { ...(node as Record<string, unknown>) };
  return /^\d+$/.test(next) ? [] : {};
}

/** A copy with the value at the path; undefined removes the entry. Missing parents are made. */
export function setIn<T>(root: T, path: string, value: unknown): T {
  const [head = '', ...rest] = path.split('.');
  const copy = branch(root, head) as Record<string, unknown>;
  const next = rest.length === 0 ? value : setIn(copy[head], rest.join('.'), value);
  if (next === undefined && !Array.isArray(copy)) {
    return Object.fromEntries(Object.entries(copy).filter(([name]) => name !== head)) as T;
  }
  copy[head] = next;
  return copy as T;
}

/** The dotted form of a path however it writes its names: "engines[0].static_thrust" is "engines.0.staticThrust". */
export function dotted(path: string): string {
  return path.replace(/\[(\d+)\]/g, '.$1').replace(/_([a-z])/g, (_, c: string) => c.toUpperCase());
}

/** Endings of names that say a unit, longer ones before those they end with. */
const units: [ending: string, si: string][] = [
  ['NewtonMetersPerRadian', 'N m/rad'],
  ['NewtonMeters', 'N m'],
  ['MetersPerSecond', 'm/s'],
  ['NewtonsPerMeter', 'N/m'],
  ['KgPerCubicMeter', 'kg/m3'],
  ['KgPerSecond', 'kg/s'],
  ['KgSquareMeters', 'kg m2'],
  ['GramsPerMinute', 'g/min'],
  ['SquareMeters', 'm2'],
  ['SquareMillimeters', 'mm²'],
  ['Meters', 'm'],
  ['Kg', 'kg'],
  ['Newtons', 'N'],
  ['Degrees', 'deg'],
  ['Celsius', 'degC'],
  ['Pascals', 'Pa'],
  ['Liters', 'l'],
  ['Minutes', 'min'],
  ['Years', 'years'],
  ['AmpereHours', 'Ah'],
  ['Amperes', 'A'],
  ['Volts', 'V'],
  ['Ohms', 'Ω'],
  ['Megahertz', 'MHz'],
  ['Milliwatts', 'mW'],
  ['Decibels', 'dB'],
  ['Dbm', 'dBm'],
  ['PerRadian', '1/rad'],
  ['Seconds', 's'],
  ['Watts', 'W'],
  ['Ratio', '1'],
];

const unitEnding = (name: string): [ending: string, si: string] | undefined =>
  units.find(([ending]) => name.endsWith(ending));

/** Unit that stands at the end of a field's name. */
export function unitOf(path: string): string {
  return unitEnding(path)?.[1] ?? '1';
}

/** A field's name without its unit. */
export function bareName(name: string): string {
  const ending = unitEnding(name)?.[0];
  return ending !== undefined && ending.length < name.length ? name.slice(0, -ending.length) : name;
}
