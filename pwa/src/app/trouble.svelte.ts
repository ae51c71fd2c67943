import { Problem } from './problem';

/** The problem the banner shows, if any. */
export const trouble: { now: Problem | null } = $state({ now: null });

/** Shows what was caught; a cancelled request is no trouble. */
export function report(error: unknown): void {
  if (error instanceof DOMException && error.name === 'AbortError') return;
  trouble.now = error instanceof Problem ? error : new Problem(-1, String(error), '');
}

export function clearTrouble(): void {
  trouble.now = null;
}
