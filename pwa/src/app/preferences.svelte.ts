import { keepText, keptText } from './kept';
import { defaultUnits, type UnitChoice } from './units';

const key = 'pitgate.preferences';

type Preferences = { units: UnitChoice; alwaysLight: boolean };

function load(): Preferences {
  try {
    const kept = JSON.parse(keptText(key) ?? '{}') as Partial<Preferences>;
    return { units: { ...defaultUnits, ...kept.units }, alwaysLight: kept.alwaysLight ?? false };
  } catch {
    return { units: { ...defaultUnits }, alwaysLight: false };
  }
}

/** How this person reads the page; kept on this device. */
export const preferences: Preferences = $state(load());

/** Keeps the choice and applies the light ground wanted in sunlight. */
export function keepPreferences(): void {
  keepText(key, JSON.stringify(preferences));
  document.documentElement.dataset['light'] = preferences.alwaysLight ? 'always' : '';
}
