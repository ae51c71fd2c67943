import type { Problem } from '../../../app/problem';
import type { Approval } from '../../../app/wire';

/** A decision being typed, and whether its ground was changed under it. */
export type Decision = {
  /** Version the typed words rest on. */
  etag: string;
  reason: string;
  conditions: string;
  stage: 'open' | 'conflict' | 'reloaded';
};

/** A blank decision on the shown version. */
export function begin(approval: Approval): Decision {
  return {
    etag: approval.etag ?? '',
    reason: '',
    conditions: (approval.conditions ?? []).join('\n'),
    stage: 'open',
  };
}

/** A refused send: a conflict keeps every typed word and only changes the stage. */
export function refused(decision: Decision, problem: Problem): Decision {
  return problem.isConflict ? { ...decision, stage: 'conflict' } : decision;
}

/** The newer version was loaded: the words stay, the ground is new. */
export function rebase(decision: Decision, newer: Approval): Decision {
  return { ...decision, etag: newer.etag ?? '', stage: 'reloaded' };
}

/** A decision in conflict may not be sent until the newer version was looked at. */
export function maySend(decision: Decision): boolean {
  return decision.stage !== 'conflict' && decision.etag !== '';
}
