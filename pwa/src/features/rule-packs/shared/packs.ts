import type { Rule, RulePack, RulePackContent } from '../../../app/wire';
import { ruleWords } from '../../../app/ruleWords';

/** How a pack stands today, in the order in which the groups are listed. */
export const standings = ['waiting', 'draft', 'force', 'coming', 'expired', 'replaced', 'retired'] as const;
export type Standing = (typeof standings)[number];

/** The day of a moment by this device's clock: "2026-05-16". */
export function dayOf(moment: Date): string {
  const two = (n: number): string => String(n).padStart(2, '0');
  return `${String(moment.getFullYear())}-${two(moment.getMonth() + 1)}-${two(moment.getDate())}`;
}

/** How a pack stands on a day. */
export function standingOf(pack: RulePack, day: string): Standing {
  const { inForceDate = '', expiresDate = '' } = pack.content;
  switch (pack.state) {
    case 'RULE_PACK_STATE_RETIRED':
      return 'retired';
    case 'RULE_PACK_STATE_PROPOSED':
      return 'waiting';
    case 'RULE_PACK_STATE_PUBLISHED':
      if ((pack.replacedDate ?? '') !== '' && day >= (pack.replacedDate ?? '')) return 'replaced';
      if (expiresDate !== '' && day > expiresDate) return 'expired';
      return day < inForceDate ? 'coming' : 'force';
    default:
      return 'draft';
  }
}

/** Packs by their standing; groups without a pack are left out. */
export function grouped(packs: RulePack[], day: string): { standing: Standing; packs: RulePack[] }[] {
  return standings
    .map((standing) => ({ standing, packs: packs.filter((p) => standingOf(p, day) === standing) }))
    .filter((g) => g.packs.length > 0);
}

/** How many rules somebody has read in their source, and how many nobody has. */
export function verifiedCounts(content: RulePackContent): { yes: number; no: number } {
  const rules = content.rules ?? [];
  const yes = rules.filter((r) => r.verified === true).length;
  return { yes, no: rules.length - yes };
}

/** Version, days and counts of a pack in one line. */
export function packLine(content: RulePackContent): string {
  const w = ruleWords.rules;
  const { yes, no } = verifiedCounts(content);
  const last = content.expiresDate ? w.until(content.expiresDate) : w.endless;
  return [w.version(content.version ?? ''), w.from(content.inForceDate ?? ''), last, w.counts(yes, no)].join(
    ' · ',
  );
}

/** First and last day of a rule: its own within its pack's. */
export function daysOf(rule: Rule, content: RulePackContent): { first: string; last: string } {
  const lasts = [rule.expiresDate ?? '', content.expiresDate ?? ''].filter((d) => d !== '').sort();
  const firsts = [rule.inForceDate ?? '', content.inForceDate ?? ''].sort();
  return { first: firsts[1] ?? '', last: lasts[0] ?? '' };
}

/** True once the last day of a rule is over. */
export function ranOut(rule: Rule, content: RulePackContent, day: string): boolean {
  const { last } = daysOf(rule, content);
  return last !== '' && day > last;
}

/** The next version's name: "draft 1" is followed by "draft 2", "2024-05" by "2024-05-2". */
export function nextVersion(version: string, taken: string[]): string {
  const counted = /^(.*[^\d-]\s*)(\d+)$/.exec(version);
  const stem = counted?.[1] ?? `${version}-`;
  let n = counted ? Number(counted[2]) + 1 : 2;
  while (taken.includes(`${stem}${String(n)}`)) n++;
  return `${stem}${String(n)}`;
}

/** True when this person gave the word that is counted in a list. */
export function gaveWord(names: string[] | undefined, person: string | undefined): boolean {
  return person !== undefined && (names ?? []).includes(person);
}
