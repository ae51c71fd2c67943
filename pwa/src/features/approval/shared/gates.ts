import type { Approval, ApprovalState, Transition } from '../../../app/wire';

export type GateName = 'desk' | 'bench' | 'field';

/** One gate: open with who opened it and when, or shut. */
export type Gate = { name: GateName; open: boolean; next: boolean; who?: string; when?: string };

/** States in which each gate stands open; the state a hold stopped counts, not the hold. */
const openIn: Record<GateName, ApprovalState[]> = {
  desk: ['APPROVAL_STATE_BENCH', 'APPROVAL_STATE_READY', 'APPROVAL_STATE_SIGNED', 'APPROVAL_STATE_FLOWN'],
  bench: ['APPROVAL_STATE_READY', 'APPROVAL_STATE_SIGNED', 'APPROVAL_STATE_FLOWN'],
  field: ['APPROVAL_STATE_SIGNED', 'APPROVAL_STATE_FLOWN'],
};

const opensTo: Record<GateName, ApprovalState> = {
  desk: 'APPROVAL_STATE_BENCH',
  bench: 'APPROVAL_STATE_READY',
  field: 'APPROVAL_STATE_SIGNED',
};

const nextIn: Record<GateName, ApprovalState[]> = {
  desk: ['APPROVAL_STATE_SUBMITTED', 'APPROVAL_STATE_DESK_REVIEW'],
  bench: ['APPROVAL_STATE_BENCH'],
  field: ['APPROVAL_STATE_READY'],
};

/** The state before a hold, by the history; the state itself when it is not held. */
export function standingState(approval: Approval): ApprovalState {
  const state = approval.state ?? 'APPROVAL_STATE_UNSPECIFIED';
  if (state !== 'APPROVAL_STATE_HELD') return state;
  const held = [...(approval.transitions ?? [])]
    .reverse()
    .find((t) => t.toState === 'APPROVAL_STATE_HELD' && t.fromState !== 'APPROVAL_STATE_HELD');
  return held?.fromState ?? state;
}

function openedBy(transitions: Transition[], name: GateName): Transition | undefined {
  return [...transitions]
    .reverse()
    .find(
      (t) =>
        t.toState === opensTo[name] && t.fromState !== 'APPROVAL_STATE_HELD' && t.fromState !== t.toState,
    );
}

/** The three gates in their order. */
export function gatesOf(approval: Approval): Gate[] {
  const state = standingState(approval);
  return (['desk', 'bench', 'field'] as const).map((name) => {
    const open = openIn[name].includes(state);
    const by = open ? openedBy(approval.transitions ?? [], name) : undefined;
    const next = approval.state === state && nextIn[name].includes(state);
    return {
      name,
      open,
      next,
      ...(by?.actorDisplayName ? { who: by.actorDisplayName } : {}),
      ...(by?.time ? { when: by.time } : {}),
    };
  });
}
