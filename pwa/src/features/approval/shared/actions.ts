import type { Approval, ApprovalState, Person } from '../../../app/wire';

export type ActionName =
  | 'beginReview'
  | 'passDesk'
  | 'passBench'
  | 'sign'
  | 'recordFlight'
  | 'return'
  | 'release'
  | 'hold'
  | 'refuse'
  | 'withdraw';

/** What an action asks for before it is sent. */
export type Needs = 'nothing' | 'reason' | 'conditions' | 'password';

type Rule = { from: ApprovalState[]; by: 'officer' | 'owner'; needs: Needs; ownerMay?: boolean };

const s = (...names: string[]): ApprovalState[] => names.map((n) => `APPROVAL_STATE_${n}` as ApprovalState);

/** What the page offers. The server decides; this only spares people from being refused. */
export const rules: Record<ActionName, Rule> = {
  beginReview: { from: s('SUBMITTED'), by: 'officer', needs: 'nothing' },
  passDesk: { from: s('DESK_REVIEW'), by: 'officer', needs: 'conditions' },
  passBench: { from: s('BENCH'), by: 'officer', needs: 'nothing' },
  sign: { from: s('READY'), by: 'officer', needs: 'password' },
  recordFlight: { from: s('SIGNED'), by: 'officer', needs: 'nothing', ownerMay: true },
  return: { from: s('SUBMITTED', 'DESK_REVIEW', 'BENCH', 'READY'), by: 'officer', needs: 'reason' },
  release: { from: s('HELD'), by: 'officer', needs: 'reason' },
  hold: {
    from: s('SUBMITTED', 'DESK_REVIEW', 'RETURNED', 'BENCH', 'READY', 'SIGNED'),
    by: 'officer',
    needs: 'reason',
    ownerMay: true,
  },
  refuse: { from: s('SUBMITTED', 'DESK_REVIEW', 'BENCH', 'READY'), by: 'officer', needs: 'reason' },
  withdraw: {
    from: s('DRAFT', 'SUBMITTED', 'DESK_REVIEW', 'RETURNED', 'BENCH', 'READY', 'SIGNED', 'LAPSED', 'HELD'),
    by: 'owner',
    needs: 'nothing',
  },
};

export function isOwner(approval: Approval, person: Person | null): boolean {
  return person?.name !== undefined && person.name === approval.owner;
}

const isOfficer = (person: Person | null): boolean => person?.roles?.includes('ROLE_SAFETY_OFFICER') ?? false;

/** Actions this person may take now, the usual one first. */
export function actionsFor(approval: Approval, person: Person | null): ActionName[] {
  const state = approval.state ?? 'APPROVAL_STATE_UNSPECIFIED';
  const owner = isOwner(approval, person);
  return (Object.keys(rules) as ActionName[]).filter((name) => {
    const rule = rules[name];
    if (!rule.from.includes(state)) return false;
    if (rule.by === 'owner') return owner;
    return isOfficer(person) && (!owner || rule.ownerMay === true);
  });
}

/** True where an officer looks at an own model that waits for an officer's word. */
export function mustBeSomeoneElse(approval: Approval, person: Person | null): boolean {
  const waits = s('SUBMITTED', 'DESK_REVIEW', 'BENCH', 'READY', 'HELD');
  return isOwner(approval, person) && waits.includes(approval.state ?? 'APPROVAL_STATE_UNSPECIFIED');
}

/** True where this person may answer rules that ask for somebody's word. */
export function mayAnswer(approval: Approval, person: Person | null): boolean {
  const from = s('DESK_REVIEW', 'BENCH', 'READY');
  const state = approval.state ?? 'APPROVAL_STATE_UNSPECIFIED';
  return isOfficer(person) && !isOwner(approval, person) && from.includes(state);
}

/** True where the owner may change the model and send it again. */
export function mayResubmit(approval: Approval, person: Person | null): boolean {
  const from = s('DRAFT', 'RETURNED', 'LAPSED');
  return isOwner(approval, person) && from.includes(approval.state ?? 'APPROVAL_STATE_UNSPECIFIED');
}

/** Lines of a box as a list, empty lines left out. */
export function linesOf(text: string): string[] {
  return text
    .split('\n')
    .map((l) => l.trim())
    .filter((l) => l !== '');
}
