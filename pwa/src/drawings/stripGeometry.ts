import type { Finding } from '../app/wire';

/** What a margin strip needs of a finding. */
export type StripInput = Pick<
  Finding,
  'value' | 'bandLow' | 'bandHigh' | 'limit' | 'upperLimit' | 'limitSense' | 'verdict'
>;

/** A piece of the scale, in page units. */
export type Span = { x: number; width: number };

/** One margin strip, placed along `width`. */
export type Strip = {
  unknown: boolean;
  bar?: Span;
  tick?: number;
  posts: { x: number; value: number }[];
  /** Where a value would not meet the limit. */
  wrong: Span[];
  marks: { x: number; value: number }[];
};

const given = (values: (number | undefined)[]): number[] =>
  values.filter((v): v is number => v !== undefined && Number.isFinite(v));

/** Least and greatest number to show, with room at both ends so that nothing touches the edge. */
export function domainOf(input: StripInput): [number, number] | undefined {
  const all = given([input.value, input.bandLow, input.bandHigh, input.limit, input.upperLimit]);
  if (all.length === 0) return undefined;
  const low = Math.min(...all);
  const high = Math.max(...all);
  // Ends that differ by rounding alone are one value.
  const alike = high - low <= 1e-6 * Math.max(Math.abs(high), Math.abs(low));
  const span = alike ? Math.abs(high) * 0.2 || 1 : high - low;
  return [low - span * 0.22, high + span * 0.22];
}

/** The step of 1, 2 or 5 times a power of ten that puts at most `count` marks on a span. */
export function niceStep(span: number, count: number): number {
  const raw = span / count;
  const power = 10 ** Math.floor(Math.log10(raw));
  const lead = raw / power;
  return (lead <= 1 ? 1 : lead <= 2 ? 2 : lead <= 5 ? 5 : 10) * power;
}

/** Round numbers within a range. */
export function niceMarks(low: number, high: number, count: number): number[] {
  const step = niceStep(high - low, count);
  const marks: number[] = [];
  for (let i = Math.ceil(low / step); i * step <= high; i++) marks.push(Number((i * step).toPrecision(12)));
  return marks;
}

/** The ends of the scale on the wrong side of the limit. */
function wrongSides(input: StripInput, at: (v: number) => number, width: number): Span[] {
  const post = input.limit === undefined ? undefined : at(input.limit);
  const upper = input.upperLimit === undefined ? undefined : at(input.upperLimit);
  const below = post === undefined ? [] : [{ x: 0, width: post }];
  const above = (x: number | undefined): Span[] => (x === undefined ? [] : [{ x, width: width - x }]);
  switch (input.limitSense) {
    case 'LIMIT_SENSE_AT_LEAST':
      return below;
    case 'LIMIT_SENSE_AT_MOST':
      return above(post);
    case 'LIMIT_SENSE_WITHIN':
      return [...below, ...above(upper)];
    default:
      return [];
  }
}

const decided = new Set<string>(['VERDICT_HOLDS', 'VERDICT_TIGHT', 'VERDICT_FAILS']);

/** The band, at least two units wide so that a sharp value stays visible. */
function barOf(input: StripInput, at: (v: number) => number): Span | undefined {
  const low = input.bandLow ?? input.value;
  const high = input.bandHigh ?? input.value;
  if (low === undefined || high === undefined) return undefined;
  const x = at(low);
  return { x, width: Math.max(2, at(high) - x) };
}

/**
 * Places band, value, posts and marks along a strip of the given width, on its own scale or on one shared with others. What holds or fails without a
 * number is no question: its limit stands alone.
 */
export function stripGeometry(input: StripInput, width: number, shared?: [number, number]): Strip {
  const unknown =
    input.verdict === 'VERDICT_UNKNOWN' || (input.value === undefined && !decided.has(input.verdict ?? ''));
  const domain = shared ?? domainOf(input);
  if (!domain) return { unknown, posts: [], wrong: [], marks: [] };
  const [low, high] = domain;
  const at = (v: number): number => ((v - low) / (high - low)) * width;
  const limits = input.limitSense === 'LIMIT_SENSE_NONE' ? [] : given([input.limit, input.upperLimit]);
  const strip: Strip = {
    unknown,
    posts: limits.map((value) => ({ x: at(value), value })),
    wrong: wrongSides(input, at, width),
    marks: niceMarks(low, high, Math.max(2, Math.floor(width / 90))).map((value) => ({
      x: at(value),
      value,
    })),
  };
  if (unknown || input.value === undefined) return strip;
  const bar = barOf(input, at);
  return { ...strip, ...(bar ? { bar } : {}), tick: at(input.value) };
}

/** Marks whose words would not run into a post's words or over the edge. */
export function freeMarks(strip: Strip, width: number, room: number): Strip['marks'] {
  return strip.marks.filter(
    (m) => m.x > room / 2 && m.x < width - room / 2 && strip.posts.every((p) => Math.abs(p.x - m.x) > room),
  );
}
