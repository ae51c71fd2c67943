/**
 * Small texts kept on this device, or in this tab alone. A browser that refuses its storage, or has no room in it, keeps them until the page is left.
 */

type Where = 'device' | 'tab';

const memory = new Map<string, string>();

const storage = (where: Where): Storage => (where === 'tab' ? sessionStorage : localStorage);

/** What is kept under a name; null for nothing. */
export function keptText(name: string, where: Where = 'device'): string | null {
  try {
    return memory.get(name) ?? storage(where).getItem(name);
  } catch {
    return null;
  }
}

/** Keeps a text under a name; null removes it. */
export function keepText(name: string, text: string | null, where: Where = 'device'): void {
  memory.delete(name);
  try {
    if (text === null) storage(where).removeItem(name);
    else storage(where).setItem(name, text);
  } catch {
    if (text !== null) memory.set(name, text);
  }
}
