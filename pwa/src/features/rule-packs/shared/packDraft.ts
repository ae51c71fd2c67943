import type { Rule, RulePack, RulePackContent } from '../../../app/wire';
import { unitOfRule } from './describe';
import { nextVersion } from './packs';

/** What a committee member types before it is kept. Replaced as a whole at every change. */
export type PackDraft = {
  content: RulePackContent;
  /** Draft on the server that this changes, with the etag it rests on; absent for a new one. */
  rests?: { name: string; etag: string };
};

export function draftOf(pack: RulePack): PackDraft {
  return { content: pack.content, rests: { name: pack.name ?? '', etag: pack.etag ?? '' } };
}

/** The draft on a newer version of its pack: what was typed stays. */
export function rebased(draft: PackDraft, newer: RulePack): PackDraft {
  return { ...draft, rests: { name: newer.name ?? '', etag: newer.etag ?? '' } };
}

/** An empty pack that comes into force on a day. */
export function blankPack(day: string): RulePackContent {
  return { inForceDate: day, rules: [] };
}

/**
 * The next version of a pack. It keeps the first day of the former, so that it takes its place on all days; with a later first day the former counts until
 * then. A last day that is over is left out.
 */
export function nextOf(content: RulePackContent, packs: RulePack[], today: string): RulePackContent {
  const taken = packs.filter((p) => p.content.id === content.id).map((p) => p.content.version ?? '');
  const { expiresDate = '', version = '', ...rest } = content;
  return {
    ...rest,
    version: taken.includes(version) ? nextVersion(version, taken) : version,
    ...(expiresDate >= today ? { expiresDate } : {}),
  };
}

const without = (rule: Rule, ...names: (keyof Rule)[]): Rule =>
  Object.fromEntries(Object.entries(rule).filter(([name]) => !names.includes(name as keyof Rule))) as Rule;

/** Names whose change makes a rule one that nobody has read yet. */
const substance: (keyof Rule)[] = [
  'kind',
  'limit',
  'fact',
  'sense',
  'value',
  'conditions',
  'officer',
  'citation',
  'date',
];

/** A rule with one part changed. What its kind has no use for goes; a changed substance must be read anew. */
export function changed(rule: Rule, name: keyof Rule, value: unknown): Rule {
  let next = (value === undefined ? without(rule, name) : { ...rule, [name]: value }) as Rule;
  if (name === 'kind') {
    next = without(next, 'limit', 'fact', 'sense', 'value', 'unit', 'confirmationDays', 'officer');
    if (value === 'RULE_KIND_CLASS') next = { ...next, sense: 'RULE_SENSE_GREATEST' };
  }
  if (next.value !== undefined) next = { ...next, unit: unitOfRule(next) };
  return substance.includes(name) ? unverified(next) : next;
}

/** A rule that somebody has read in its source. */
export function verified(rule: Rule, by: string, day: string): Rule {
  return { ...rule, verified: true, verifiedBy: by, verifiedDate: day };
}

/** A rule that nobody has read yet. */
export function unverified(rule: Rule): Rule {
  return rule.verified === undefined
    ? rule
    : { ...without(rule, 'verifiedBy', 'verifiedDate'), verified: false };
}

/** A rule to begin with, unlike all others of its pack. */
export function newRule(rules: Rule[]): Rule {
  const taken = rules.map((r) => r.id);
  let n = rules.length + 1;
  while (taken.includes(`rule-${String(n)}`)) n++;
  return { id: `rule-${String(n)}`, kind: 'RULE_KIND_LIMIT', verified: false };
}
