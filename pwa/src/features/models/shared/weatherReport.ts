import { api, ask } from '../../../app/api';
import { Problem } from '../../../app/problem';
import type { DayConditions, DecodeWeatherResponse } from '../../../app/wire';
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

/** The day with what a report says put over it; what the report leaves out stays as it was, and so does the planned time. */
export function withReport(day: DayConditions | undefined, said: DayConditions | undefined): DayConditions {
  const given = Object.entries(said ?? {}).filter(([, v]) => v !== undefined && v !== null);
  const planned = day?.time ? { time: day.time } : {};
  return { ...day, ...Object.fromEntries(given), ...planned };
}

/** Names of the boxes that a report fills, in the order of the form. */
export function filledBoxes(said: DayConditions | undefined): string[] {
  const boxes = Object.entries(words.entries).filter(([path]) => path.startsWith('day.'));
  const names = boxes
    .filter(([path]) => (said as Record<string, unknown> | undefined)?.[path.slice('day.'.length)])
    .map(([, entry]) => entry.label.toLowerCase());
  return names;
}

/** What the server says against a report, each naming its group; undefined when the trouble is another. */
export function notUnderstood(error: unknown): string[] | undefined {
  if (!(error instanceof Problem) || error.status !== 400) return undefined;
  const named = error.fields.map((f) => f.description);
  return named.length > 0 ? named : [error.message];
}
