import type { AssessmentInput, Finding, Report, Rule, RuleConfirmation } from '../../../app/wire';

/** A rule that asks for somebody's word, its finding, and the word given. */
export type Asked = { key: string; rule: Rule; finding?: Finding; word?: RuleConfirmation };

/** The name under which a rule is confirmed: "<pack>.<rule>". */
export const keyOf = (rule: Rule): string => `${rule.pack ?? ''}.${rule.id ?? ''}`;

/** Rules that ask for a word and apply, or were answered already; one that holds unasked does not apply. */
export function askedOf(document: AssessmentInput, report: Report | undefined): Asked[] {
  const rules = (document.limits?.rules ?? []).filter((r) => r.kind === 'RULE_KIND_CONFIRMATION' && r.id);
  return rules
    .map((rule): Asked => {
      const key = keyOf(rule);
      const finding = report?.findings?.find((f) => f.id === `rule.${key}`);
      const word = (document.confirmations ?? []).findLast((c) => c.rule === key);
      return { key, rule, ...(finding ? { finding } : {}), ...(word ? { word } : {}) };
    })
    .filter((a) => a.word !== undefined || (a.finding && a.finding.verdict !== 'VERDICT_HOLDS'));
}

/** The words with one given anew; a later one takes the place of the former. */
export function withWord(words: RuleConfirmation[] | undefined, word: RuleConfirmation): RuleConfirmation[] {
  const at = (words ?? []).findIndex((c) => c.rule === word.rule);
  if (at < 0) return [...(words ?? []), word];
  return (words ?? []).map((c, i) => (i === at ? word : c));
}
