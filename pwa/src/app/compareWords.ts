import type { components } from '../gen/api';

type ChangeKind = components['schemas']['pitgate.v1.ChangeKind'];

const count = (n: number, one: string, many: string): string =>
  n === 1 ? `1 ${one}` : `${String(n)} ${many}`;

/** Words of two documents compared; a part of the catalogue that is fetched with the pages that say them. */
export const compareWords = {
  title: 'Compare',
  line: 'Two revisions, plans, fields or days of one model: what differs, and which findings moved by it.',
  from: 'First',
  to: 'Second',
  model: 'Model',
  plan: 'Launch plan',
  day: 'Day',
  field: 'Field',
  ask: 'Compare',
  busy: 'Computing both …',
  stale: 'The choice changed since; compare again.',
  refused: 'Not compared',
  draft: 'the draft on this device',
  revision: (n: number, when: string) => `revision ${String(n)}, ${when}`,
  approval: (field: string, state: string, when: string) => `${field}, ${when}, ${state}`,
  side: (model: string, plan: string, day: string, field: string) =>
    `${model}; launch plan: ${plan}; day: ${day}; field: ${field}`,
  noFlight: 'none',
  noField: 'none',
  ownField: (name: string) => (name === '' ? 'as the launch plan says' : `as the launch plan says: ${name}`),
  otherField: 'The launch starts from the other field’s own strip or spot.',
  differ: (n: number) => (n === 0 ? 'No input differs.' : `${count(n, 'input differs', 'inputs differ')}.`),
  moved: (n: number, of: number) =>
    n === 0
      ? `None of ${String(of)} findings moved.`
      : `${count(n, 'finding', 'findings')} of ${String(of)} moved.`,
  result: 'From the first to the second',
  inputs: 'What differs',
  moves: 'Findings that moved, worst change first',
  still: (n: number) => `${count(n, 'finding', 'findings')} did not move`,
  parts: {
    model: 'Model',
    field: 'Field',
    launchPlan: 'Launch plan',
    day: 'Day',
    limits: 'Limits and rules',
    confirmations: 'What people confirmed',
  } as Record<string, string>,
  kind: {
    CHANGE_KIND_UNSPECIFIED: '',
    CHANGE_KIND_CHANGED: '',
    CHANGE_KIND_ADDED: 'added',
    CHANGE_KIND_REMOVED: 'removed',
    CHANGE_KIND_REORDERED: 'in another order',
  } satisfies Record<ChangeKind, string>,
  then: 'becomes',
  whole: 'the whole part',
  none: 'not given',
  spread: (text: string) => `± ${text}`,
  noSpread: 'no spread of its own',
  value: 'Value',
  margin: 'Margin',
  limit: 'Limit',
  notAsked: 'not asked',
  unchangedVerdict: (verdict: string) => `still ${verdict}`,
  by: (text: string) => `It rests on: ${text}.`,
  byNone: 'None of the inputs that differ stands in its chain.',
  more: (n: number) => `and ${String(n)} more`,
  changesTitle: 'What changed since the last revision',
  changesLine:
    'The assessment in hand against the one that was submitted before it. Both are computed by the present core.',
  changesAgainst: 'Compare with',
  changesFirst: 'This is the first submission; there is no earlier one to compare with.',
  submission: (revision: number, when: string) => `revision ${String(revision)}, submitted ${when}`,
  link: 'Compare with another revision, plan, field or day',
};
