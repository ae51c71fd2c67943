import { keepText, keptText } from '../../../app/kept';
import type { ActionName } from './actions';
import type { Decision } from './conflict';

/** Words typed for a decision that was not sent yet. */
type Words = Pick<Decision, 'reason' | 'conditions'>;

const keyOf = (approval: string): string => `pitgate.decision.${approval}`;

/** Keeps typed words in this tab, so that a reload or an ended session loses nothing. Never a password. */
export function keepTyped(approval: string, action: ActionName, { reason, conditions }: Decision): void {
  keepText(keyOf(approval), JSON.stringify({ action, reason, conditions }), 'tab');
}

/** Words typed earlier in this tab for the same action on the same approval. */
export function typedBefore(approval: string, action: ActionName): Partial<Words> {
  try {
    const kept = JSON.parse(keptText(keyOf(approval), 'tab') ?? '{}') as Partial<Words & { action: string }>;
    if (kept.action !== action) return {};
    return { reason: kept.reason ?? '', conditions: kept.conditions ?? '' };
  } catch {
    return {};
  }
}

export function dropTyped(approval: string): void {
  keepText(keyOf(approval), null, 'tab');
}
