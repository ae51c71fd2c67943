import { dayOf } from '../../rule-packs/shared/packs';

/** What an officer types as the answer to one rule. */
export type RuleAnswer = { rule: string; confirmed: boolean | undefined; date: string; reason: string };

export const beginAnswer = (rule: string, date: string): RuleAnswer => ({
  rule,
  confirmed: undefined,
  date,
  reason: '',
});

/** The day an answer is for: today, or the day of the flight where that is past, since a later word does not count for it. */
export function dayOfAnswer(flight: string | undefined, now: Date): string {
  const today = dayOf(now);
  const day = (flight ?? '').slice(0, today.length);
  return day !== '' && day < today ? day : today;
}
