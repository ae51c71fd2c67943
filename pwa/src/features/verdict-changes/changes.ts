import type { Verdict, VerdictChange, VerdictChanges } from '../../app/wire';
import { words } from '../../app/words';

const verdict = (v: Verdict | undefined): string =>
  v === undefined || v === 'VERDICT_UNSPECIFIED' ? words.changes.absent : words.verdict[v];

/** One changed verdict in a line. */
export const changeText = (c: VerdictChange): string =>
  words.changes.turned((c.title ?? c.findingId ?? '').replace(/\.$/, ''), verdict(c.from), verdict(c.to));

/** What became of the approval. */
export function outcomeText(c: VerdictChanges): string {
  if (c.failure) return words.changes.failed(c.failure);
  return c.lapsed ? words.changes.lapsed : words.changes.stands;
}

/** Those that came after a moment, and the one that brought the answer shown; all of them when nothing was computed. */
export function since(
  changes: VerdictChanges[],
  moment: string | undefined,
  shown?: string,
): VerdictChanges[] {
  if (!moment) return changes;
  const brought = (c: VerdictChanges): boolean => Boolean(c.assessment) && c.assessment === shown;
  return changes.filter((c) => brought(c) || Date.parse(c.createTime ?? '') > Date.parse(moment));
}
