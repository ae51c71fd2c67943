// @vitest-environment jsdom
import { flushSync, mount, unmount } from 'svelte';
import { afterEach, describe, expect, it } from 'vitest';
import type { Report } from '../../src/app/wire';
import { words } from '../../src/app/words';
import Chain from '../../src/features/findings/Chain.svelte';

const report: Report = {
  quantities: [
    { id: 'a', title: 'First', value: 1, unit: 'm', formula: 'a = b', from: ['b', 'model.mass.emptyMassKg'] },
    { id: 'b', title: 'Second', value: 2, unit: 'm', source: 'a book', from: ['a'] },
  ],
};

let shown: Record<string, unknown> | undefined;

function show(): HTMLElement {
  shown = mount(Chain, {
    target: document.body,
    props: {
      finding: { id: 'f', from: ['a', 'a'] },
      report,
      document: { model: { mass: { emptyMassKg: { value: 7.3, basis: 'BASIS_MEASURED', spread: 0.02 } } } },
    },
  });
  flushSync();
  return document.body;
}

/** Opens a details element as a person does. */
function open(root: ParentNode, selector: string): HTMLElement {
  const details = root.querySelector<HTMLDetailsElement>(selector);
  if (!details) throw new Error(`no ${selector}`);
  details.open = true;
  details.dispatchEvent(new Event('toggle'));
  flushSync();
  return details;
}

afterEach(async () => {
  if (shown) await unmount(shown);
  shown = undefined;
});

describe('the chain behind a finding', () => {
  it('shows nothing of it before it is opened, and one step at a time after', () => {
    const root = show();
    expect(root.textContent).not.toContain('First');
    const chain = open(root, '[data-chain]');
    expect(chain.querySelectorAll('[data-ref="a"]')).toHaveLength(1);
    expect(chain.textContent).toContain('First');
    expect(chain.textContent).not.toContain('Second');
  });

  it('leads to the input with basis and spread, and ends where it would go round in a circle', () => {
    const chain = open(show(), '[data-chain]');
    const first = open(chain, '[data-ref="a"] > details');
    expect(first.textContent).toContain('a = b');
    const input = first.querySelector('[data-step="input"]')?.textContent?.replace(/\s+/g, ' ');
    expect(input).toContain('mass, tanks empty 7.3 kg ± 0.02 kg, measured');
    const second = open(first, '[data-ref="b"] > details');
    expect(second.textContent).toContain('a book');
    const again = second.querySelector('[data-ref="a"]');
    expect(again?.textContent).toContain(words.chain.circle);
    expect(again?.querySelector('details')).toBeNull();
  });
});
