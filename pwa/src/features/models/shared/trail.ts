/** Earlier versions of what is typed, newest last, so that every change can be taken back. */
export type Trail<T> = { now: T; before: { version: T; place: string }[]; after?: T[] };

const longest = 200;

export function startTrail<T>(now: T): Trail<T> {
  return { now, before: [] };
}

/** Adds a version. Typing on in the same place is one step, so that undo takes back a value and not a letter. */
export function step<T>(trail: Trail<T>, next: T, place: string): Trail<T> {
  const last = trail.before.at(-1);
  if (place !== '' && last?.place === place) return { now: next, before: trail.before };
  return { now: next, before: [...trail.before, { version: trail.now, place }].slice(-longest) };
}

/** Takes the last step back. */
export function undo<T>(trail: Trail<T>): Trail<T> {
  const last = trail.before.at(-1);
  if (!last) return trail;
  return { now: last.version, before: trail.before.slice(0, -1), after: [trail.now, ...(trail.after ?? [])] };
}

/** Does again what was taken back last. */
export function redo<T>(trail: Trail<T>): Trail<T> {
  const [next, ...after] = trail.after ?? [];
  if (next === undefined) return trail;
  return { now: next, before: [...trail.before, { version: trail.now, place: '' }], after };
}
