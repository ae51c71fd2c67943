import { api, ask } from '../../../app/api';
import { getIn } from '../../../app/paths';
import { Problem } from '../../../app/problem';
import type { DayConditions, DecodeWeatherResponse, Quantity } from '../../../app/wire';
import { words } from '../../../app/words';

/** Reads an aerodrome report into conditions of the day; the month is the one that brings it nearest to a time. */
export function decodeWeather(
  club: string,
  text: string,
  near: string | undefined,
): Promise<DecodeWeatherResponse> {
  return ask(
    api.POST('/v1/clubs/{parent}/weather:decode', {
      params: { path: { parent: club } },
      body: { text, ...(near === undefined ? {} : { nearTime: near }) },
    }),
  );
}

/** A number no finer than a step that is a power of ten. */
const atStep = (value: number, step: number): number => Number(value.toFixed(Math.max(0, -Math.log10(step))));

/** A quantity in no more digits than a hundredth of its spread tells apart, so that a box shows what is computed with. */
export function readable(q: Quantity): Quantity {
  const { value, spread } = q;
  if (value === undefined || spread === undefined || !(spread > 0)) return q;
  const step = 10 ** Math.min(0, Math.floor(Math.log10(spread / 100)));
  return { ...q, value: atStep(value, step), spread: Number(spread.toPrecision(3)) };
}

const isQuantity = (v: unknown): v is Quantity => typeof v === 'object' && v !== null && 'value' in v;

/** The day with what a report says put over it; what the report leaves out stays as it was, and so does the planned time. */
export function withReport(day: DayConditions | undefined, said: DayConditions | undefined): DayConditions {
  const given = Object.entries(said ?? {})
    .filter(([, v]) => v !== undefined && v !== null)
    .map(([name, v]) => [name, isQuantity(v) ? readable(v) : v] as const);
  const planned = day?.time ? { time: day.time } : {};
  return { ...day, ...Object.fromEntries(given), ...planned };
}

/** A label within a sentence: its first letter small, capitals that mean something kept. */
const within = (label: string): string => label.charAt(0).toLowerCase() + label.slice(1);

/** Names of the boxes that a day has a value for, in the order of the form. */
export function filledBoxes(day: DayConditions | undefined): string[] {
  return Object.entries(words.entries)
    .filter(([path]) => path.startsWith('day.') && getIn({ day }, path) !== undefined)
    .map(([, entry]) => within(entry.label));
}

/** Names of the boxes whose older values stay because a report says nothing of them. */
export function stayingBoxes(before: DayConditions | undefined, said: DayConditions | undefined): string[] {
  const filled = filledBoxes(said);
  return filledBoxes(before).filter((name) => !filled.includes(name));
}

/** What the server says against a report, each naming its group; undefined when the trouble is another. */
export function notUnderstood(error: unknown): string[] | undefined {
  if (!(error instanceof Problem) || error.status !== 400) return undefined;
  const named = error.fields.map((f) => f.description);
  return named.length > 0 ? named : [error.message];
}
