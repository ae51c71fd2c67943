import type { Approval, ApprovalState, Gate as GateOnWire, Transition } from '../../../app/wire';

export type GateName = 'desk' | 'bench' | 'field';

/** One gate: open with who opened it and when, or shut. Kept: it was passed before a lapse and stands for the present answer too. */
export type Gate = {
  name: GateName;
  open: boolean;
  next: boolean;
  kept: boolean;
  who?: string;
  when?: string;
};

/** States in which each gate stands open; the state a hold stopped counts, not the hold. */
const openIn: Record<GateName, ApprovalState[]> = {
  desk: ['APPROVAL_STATE_BENCH', 'APPROVAL_STATE_READY', 'APPROVAL_STATE_SIGNED', 'APPROVAL_STATE_FLOWN'],
  bench: ['APPROVAL_STATE_READY', 'APPROVAL_STATE_SIGNED', 'APPROVAL_STATE_FLOWN'],
  field: ['APPROVAL_STATE_SIGNED', 'APPROVAL_STATE_FLOWN'],
};

/** The steps that pass each gate; where the next one is kept, the step leads past it. */
const passes: Record<GateName, { from: ApprovalState; to: ApprovalState[] }> = {
  desk: { from: 'APPROVAL_STATE_DESK_REVIEW', to: ['APPROVAL_STATE_BENCH', 'APPROVAL_STATE_READY'] },
  bench: { from: 'APPROVAL_STATE_BENCH', to: ['APPROVAL_STATE_READY'] },
  field: { from: 'APPROVAL_STATE_READY', to: ['APPROVAL_STATE_SIGNED'] },
};

const onWire: Record<GateName, GateOnWire> = { desk: 'GATE_DESK', bench: 'GATE_BENCH', field: 'GATE_FIELD' };
const names: GateName[] = ['desk', 'bench', 'field'];

/** States in which an officer is to pass the first gate that is shut. */
const reviewed: ApprovalState[] = [
  'APPROVAL_STATE_SUBMITTED',
  'APPROVAL_STATE_DESK_REVIEW',
  'APPROVAL_STATE_BENCH',
  'APPROVAL_STATE_READY',
];

/** The state before a hold, by the history, or lapsed where it lapsed underneath; the state itself when it is not held. */
export function standingState(approval: Approval): ApprovalState {
  const state = approval.state ?? 'APPROVAL_STATE_UNSPECIFIED';
  if (state !== 'APPROVAL_STATE_HELD') return state;
  for (const t of [...(approval.transitions ?? [])].reverse()) {
    if (t.fromState !== 'APPROVAL_STATE_HELD') return t.fromState ?? state;
    if (t.gates?.length) return 'APPROVAL_STATE_LAPSED';
  }
  return state;
}

function openedBy(transitions: Transition[], name: GateName): Transition | undefined {
  const step = passes[name];
  return [...transitions]
    .reverse()
    .find((t) => t.fromState === step.from && step.to.includes(t.toState ?? 'APPROVAL_STATE_UNSPECIFIED'));
}

/** The three gates in their order. */
export function gatesOf(approval: Approval): Gate[] {
  const state = standingState(approval);
  const kept = (name: GateName): boolean => approval.keptGates?.includes(onWire[name]) ?? false;
  const open = (name: GateName): boolean => openIn[name].includes(state) || kept(name);
  const first =
    reviewed.includes(state) && approval.state === state ? names.find((n) => !open(n)) : undefined;
  return names.map((name) => {
    const by = open(name) ? openedBy(approval.transitions ?? [], name) : undefined;
    return {
      name,
      open: open(name),
      next: name === first,
      kept: kept(name),
      ...(by?.actorDisplayName ? { who: by.actorDisplayName } : {}),
      ...(by?.time ? { when: by.time } : {}),
    };
  });
}

/** What became of one gate, and why. */
export type Fate = { name: GateName; stands: boolean; why: string };

/** What became of the gates that stood, in one step; empty where it concerned none. */
export function fatesOf(step: Transition | undefined): Fate[] {
  const found: Fate[] = [];
  for (const name of names) {
    const fate = step?.gates?.find((f) => f.gate === onWire[name]);
    if (fate) found.push({ name, stands: fate.stands ?? false, why: fate.why ?? '' });
  }
  return found;
}

/** States from which an approval is still on its way to the field after gates opened again. */
const onItsWay: ApprovalState[] = [...reviewed, 'APPROVAL_STATE_LAPSED'];

/** The last step that told of gates, while the approval is on its way to the field. */
export function lastFates(approval: Approval): Transition | undefined {
  if (!onItsWay.includes(standingState(approval))) return undefined;
  return [...(approval.transitions ?? [])].reverse().find((t) => (t.gates?.length ?? 0) > 0);
}
