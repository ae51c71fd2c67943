import { describe, expect, it } from 'vitest';
import type { Approval, ApprovalState, Person } from '../../src/app/wire';
import { mayAnswer } from '../../src/features/approval/shared/actions';
import { dayOfAnswer } from '../../src/features/approval/shared/answers';
import { gatesOf } from '../../src/features/approval/shared/gates';

const person = (name: string, ...roles: Person['roles'] & string[]): Person => ({
  name: `clubs/larkmoor/people/${name}`,
  displayName: name,
  roles,
});
const ada = person('ada', 'ROLE_MEMBER');
const ines = person('ines', 'ROLE_MEMBER', 'ROLE_SAFETY_OFFICER');
const mei = person('mei', 'ROLE_COMMITTEE');

const approval = (state: string, more: Partial<Approval> = {}): Approval => ({
  model: 'clubs/larkmoor/models/m',
  field: 'clubs/larkmoor/fields/f',
  launchPlan: {},
  day: {},
  owner: 'clubs/larkmoor/people/ada',
  state: `APPROVAL_STATE_${state}` as ApprovalState,
  ...more,
});

describe('an officer’s answer', () => {
  it.each([
    ['DESK_REVIEW', true],
    ['BENCH', true],
    ['READY', true],
    ['SUBMITTED', false],
    ['SIGNED', false],
    ['LAPSED', false],
  ])('is taken while under review: %s', (state, may) => {
    expect(mayAnswer(approval(state), ines)).toBe(may);
  });

  it('is nobody else’s, and not the owner’s', () => {
    for (const other of [ada, mei, null]) expect(mayAnswer(approval('BENCH'), other)).toBe(false);
    expect(mayAnswer(approval('BENCH', { owner: ines.name ?? '' }), ines)).toBe(false);
  });

  it('is for today, or for the day of a flight that is past', () => {
    const now = new Date(2026, 4, 20, 12);
    expect(dayOfAnswer('2026-05-16T10:00:00+01:00', now)).toBe('2026-05-16');
    expect(dayOfAnswer('2026-05-21T10:00:00+01:00', now)).toBe('2026-05-20');
    expect(dayOfAnswer(undefined, now)).toBe('2026-05-20');
  });

  it('does not count as opening the gate it was given at', () => {
    const passed = {
      fromState: 'APPROVAL_STATE_DESK_REVIEW',
      toState: 'APPROVAL_STATE_BENCH',
      actorDisplayName: 'Ines',
    } as const;
    const answered = {
      fromState: 'APPROVAL_STATE_BENCH',
      toState: 'APPROVAL_STATE_BENCH',
      actorDisplayName: 'Tomas',
    } as const;
    const gates = gatesOf(approval('BENCH', { transitions: [passed, answered] }));
    expect(gates[0]).toMatchObject({ name: 'desk', open: true, who: 'Ines' });
  });
});
