import type { Approval } from '../../../app/wire';

/** An assessment that was submitted with an approval before the one in hand. */
export type Submission = { assessment: string; revision: number; time: string };

/** Earlier assessments of an approval, the latest first, each once. */
export function earlierSubmissions(approval: Approval): Submission[] {
  const found = new Map<string, Submission>();
  for (const t of approval.transitions ?? []) {
    if (!t.assessment || t.assessment === approval.assessment || found.has(t.assessment)) continue;
    found.set(t.assessment, {
      assessment: t.assessment,
      revision: t.modelRevision ?? 0,
      time: t.time ?? '',
    });
  }
  return [...found.values()].reverse();
}
