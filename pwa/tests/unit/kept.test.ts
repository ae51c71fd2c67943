import { beforeEach, describe, expect, it, vi } from 'vitest';
import { keepText, keptText } from '../../src/app/kept';

/** A store that can be made to refuse, as a browser does without permission or room. */
class Store {
  readonly held = new Map<string, string>();
  refuses = false;
  readonly #ask = (): void => {
    if (this.refuses) throw new DOMException('denied', 'SecurityError');
  };
  getItem(name: string): string | null {
    this.#ask();
    return this.held.get(name) ?? null;
  }
  setItem(name: string, text: string): void {
    this.#ask();
    this.held.set(name, text);
  }
  removeItem(name: string): void {
    this.#ask();
    this.held.delete(name);
  }
}

describe('a small text', () => {
  let device: Store;
  let tab: Store;
  beforeEach(() => {
    [device, tab] = [new Store(), new Store()];
    vi.stubGlobal('localStorage', device);
    vi.stubGlobal('sessionStorage', tab);
  });

  it('is kept on the device, or in the tab alone', () => {
    keepText('a', 'one');
    keepText('b', 'two', 'tab');
    expect([device.held.get('a'), tab.held.get('b'), device.held.has('b')]).toEqual(['one', 'two', false]);
    expect([keptText('a'), keptText('b', 'tab'), keptText('c')]).toEqual(['one', 'two', null]);
    keepText('a', null);
    expect(keptText('a')).toBeNull();
  });

  it('is kept until the page is left where the browser refuses', () => {
    device.refuses = true;
    expect(keptText('d')).toBeNull();
    keepText('d', 'three');
    expect(keptText('d')).toBe('three');
    device.refuses = false;
    keepText('d', 'four');
    expect([keptText('d'), device.held.get('d')]).toEqual(['four', 'four']);
    device.refuses = true;
    keepText('d', null);
    expect(keptText('d')).toBeNull();
  });
});
