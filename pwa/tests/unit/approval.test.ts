import { describe, expect, it } from 'vitest';
import { Problem, problemFrom } from '../../src/app/problem';
import type { Approval, ApprovalState, Person, Transition } from '../../src/app/wire';
import {
  actionsFor,
  linesOf,
  mayResubmit,
  mustBeSomeoneElse,
} from '../../src/features/approval/shared/actions';
import { begin, maySend, rebase, refused } from '../../src/features/approval/shared/conflict';
import { fatesOf, gatesOf, lastFates, standingState } from '../../src/features/approval/shared/gates';

const ada: Person = { name: 'clubs/larkmoor/people/ada', displayName: 'Ada Thorne', roles: ['ROLE_MEMBER'] };
const ines: Person = {
  name: 'clubs/larkmoor/people/ines',
  displayName: 'Ines Valdez',
  roles: ['ROLE_MEMBER', 'ROLE_SAFETY_OFFICER'],
};

function approval(state: string, more: Partial<Approval> = {}): Approval {
  return {
    model: 'clubs/larkmoor/models/m',
    field: 'clubs/larkmoor/fields/f',
    launchPlan: {},
    day: {},
    owner: ada.name,
    etag: 'v1',
    state: `APPROVAL_STATE_${state}` as ApprovalState,
    ...more,
  };
}

describe('actionsFor', () => {
  it.each([
    ['SUBMITTED', ['beginReview', 'return', 'hold', 'refuse']],
    ['DESK_REVIEW', ['passDesk', 'return', 'hold', 'refuse']],
    ['BENCH', ['passBench', 'return', 'hold', 'refuse']],
    ['READY', ['sign', 'return', 'hold', 'refuse']],
    ['SIGNED', ['recordFlight', 'hold']],
    ['HELD', ['release']],
    ['REFUSED', []],
  ])('officer, %s', (state, expected) => {
    expect(actionsFor(approval(state), ines)).toEqual(expected);
  });

  it('offers the owner only what an owner may do', () => {
    expect(actionsFor(approval('READY'), ada)).toEqual(['withdraw']);
    expect(actionsFor(approval('FLOWN'), ada)).toEqual([]);
  });

  it('never lets an officer decide on an own model', () => {
    const own = approval('READY', { owner: ines.name });
    expect(actionsFor(own, ines)).toEqual(['hold', 'withdraw']);
    expect(mustBeSomeoneElse(own, ines)).toBe(true);
    expect(mustBeSomeoneElse(approval('READY'), ines)).toBe(false);
  });

  it('lets the owner alone send a returned approval again', () => {
    expect(mayResubmit(approval('RETURNED'), ada)).toBe(true);
    expect(mayResubmit(approval('RETURNED'), ines)).toBe(false);
    expect(mayResubmit(approval('SUBMITTED'), ada)).toBe(false);
  });

  it('offers nothing to nobody', () => {
    expect(actionsFor(approval('READY', { owner: undefined }), null)).toEqual([]);
  });
});

describe('conflict', () => {
  const stale = new Problem(409, 'changed meanwhile', 'r1', [], 'ETAG_MISMATCH');

  it('keeps every typed word and may not be sent until the newer version was loaded', () => {
    const typed = { ...begin(approval('DESK_REVIEW')), reason: 'Ramp too short' };
    const stopped = refused(typed, stale);
    expect(stopped).toMatchObject({ stage: 'conflict', reason: 'Ramp too short' });
    expect(maySend(stopped)).toBe(false);
    const again = rebase(stopped, approval('DESK_REVIEW', { etag: 'v2' }));
    expect(again).toMatchObject({ etag: 'v2', reason: 'Ramp too short', stage: 'reloaded' });
    expect(maySend(again)).toBe(true);
  });

  it('is not taken for one when the refusal has another cause', () => {
    const typed = begin(approval('DESK_REVIEW'));
    expect(refused(typed, new Problem(409, 'already there', 'r2', [], 'REQUEST_ID_REUSED'))).toBe(typed);
  });

  it('starts from the conditions the approval carries', () => {
    expect(begin(approval('DESK_REVIEW', { conditions: ['a', 'b'] })).conditions).toBe('a\nb');
  });
});

describe('problemFrom', () => {
  it('reads the sentence, the reason and the faults of fields', () => {
    const problem = problemFrom(
      400,
      {
        code: 'INVALID_ARGUMENT',
        reason: 'INVALID_DOCUMENT',
        message: 'the document has faults',
        fieldViolations: [{ field: 'model.mass', description: 'is negative' }],
      },
      'r3',
      'fallback',
    );
    expect(problem).toMatchObject({
      message: 'the document has faults',
      reason: 'INVALID_DOCUMENT',
      faults: ['model.mass: is negative'],
      requestId: 'r3',
      isConflict: false,
    });
  });

  it('does not say one fault twice', () => {
    const body = {
      message: 'etag: read it again',
      fieldViolations: [{ field: 'etag', description: 'read it again' }],
    };
    expect(problemFrom(409, body, '', '').faults).toEqual([]);
  });

  it('falls back to words of its own', () => {
    expect(problemFrom(502, undefined, '', 'try again').message).toBe('try again');
  });
});

describe('gates', () => {
  const passed = {
    fromState: 'APPROVAL_STATE_DESK_REVIEW' as const,
    toState: 'APPROVAL_STATE_BENCH' as const,
    actorDisplayName: 'Ines Valdez',
    time: '2026-11-24T18:30:00Z',
  };

  it('opens one gate after the other, with who and when', () => {
    const gates = gatesOf(approval('BENCH', { transitions: [passed] }));
    expect(gates.map((g) => [g.name, g.open, g.next])).toEqual([
      ['desk', true, false],
      ['bench', false, true],
      ['field', false, false],
    ]);
    expect(gates[0]).toMatchObject({ who: 'Ines Valdez', when: '2026-11-24T18:30:00Z' });
  });

  it('shuts a gate again after a return', () => {
    const back = { ...passed, fromState: passed.toState, toState: 'APPROVAL_STATE_RETURNED' as const };
    expect(gatesOf(approval('RETURNED', { transitions: [passed, back] })).map((g) => g.open)).toEqual([
      false,
      false,
      false,
    ]);
  });

  it('keeps gates as they stood while held, and opens none next', () => {
    const hold = { fromState: 'APPROVAL_STATE_BENCH' as const, toState: 'APPROVAL_STATE_HELD' as const };
    const held = approval('HELD', { transitions: [passed, hold] });
    expect(standingState(held)).toBe('APPROVAL_STATE_BENCH');
    expect(gatesOf(held).map((g) => [g.open, g.next])).toEqual([
      [true, false],
      [false, false],
      [false, false],
    ]);
  });

  const step = (from: string, to: string, who: string, more: Partial<Transition> = {}): Transition => ({
    fromState: `APPROVAL_STATE_${from}` as ApprovalState,
    toState: `APPROVAL_STATE_${to}` as ApprovalState,
    actorDisplayName: who,
    time: '2026-11-24T18:30:00Z',
    ...more,
  });
  const lapse = step('SIGNED', 'LAPSED', '', {
    gates: [
      { gate: 'GATE_FIELD', why: 'go or no-go is said anew' },
      { gate: 'GATE_DESK', stands: false, why: 'height fails' },
      { gate: 'GATE_BENCH', stands: true, why: 'no inspection changed' },
    ],
  });
  const inspected = [step('DESK_REVIEW', 'BENCH', 'Ines Valdez'), step('BENCH', 'READY', 'Tomas Lind')];

  it('shows a kept gate as standing with who passed it, and the first shut one as next', () => {
    const transitions = [...inspected, lapse];
    const keptGates = ['GATE_BENCH' as const];
    const show = (state: string): unknown[] =>
      gatesOf(approval(state, { transitions, keptGates })).map((g) => [g.open, g.kept, g.next, g.who]);
    expect(show('LAPSED')).toEqual([
      [false, false, false, undefined],
      [true, true, false, 'Tomas Lind'],
      [false, false, false, undefined],
    ]);
    expect(show('SUBMITTED')[0]).toEqual([false, false, true, undefined]);
    const again = gatesOf(
      approval('READY', {
        transitions: [...transitions, step('DESK_REVIEW', 'READY', 'Mei Castellan')],
        keptGates,
      }),
    );
    expect(again.map((g) => [g.open, g.next, g.who])).toEqual([
      [true, false, 'Mei Castellan'],
      [true, false, 'Tomas Lind'],
      [false, true, undefined],
    ]);
  });

  it('asks for the bench next where the desk is kept', () => {
    const gates = gatesOf(approval('SUBMITTED', { keptGates: ['GATE_DESK'] }));
    expect(gates.map((g) => g.next)).toEqual([false, true, false]);
  });

  it('tells what became of each gate in their order until it is signed', () => {
    const transitions = [...inspected, lapse];
    const told = fatesOf(lastFates(approval('LAPSED', { transitions })));
    expect(told).toEqual([
      { name: 'desk', stands: false, why: 'height fails' },
      { name: 'bench', stands: true, why: 'no inspection changed' },
      { name: 'field', stands: false, why: 'go or no-go is said anew' },
    ]);
    expect(lastFates(approval('READY', { transitions }))).toBe(lapse);
    expect(lastFates(approval('SIGNED', { transitions }))).toBeUndefined();
    expect(fatesOf(undefined)).toEqual([]);
  });

  it('knows that it lapsed under a hold', () => {
    const under = { ...lapse, ...step('HELD', 'HELD', '') };
    const held = approval('HELD', {
      transitions: [...inspected, step('SIGNED', 'HELD', 'Ines Valdez'), under],
    });
    expect(standingState(held)).toBe('APPROVAL_STATE_LAPSED');
    expect(gatesOf(held).every((g) => !g.open)).toBe(true);
    expect(lastFates(held)).toBe(under);
  });
});

it('linesOf leaves out empty lines', () => {
  expect(linesOf(' a \n\n b')).toEqual(['a', 'b']);
});
