// @vitest-environment jsdom
import { flushSync, mount, unmount } from 'svelte';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import type { Report } from '../../src/app/wire';
import FindingList from '../../src/features/findings/FindingList.svelte';

const reportOf = (value: number): Report => ({
  coreVersion: '1',
  findings: [
    { id: 'stall.speed', title: 'Stall speed', value, unit: 'm/s', verdict: 'VERDICT_FAILS' },
    { id: 'launch.end_speed', title: 'Speed at the end', value, unit: 'm/s', verdict: 'VERDICT_HOLDS' },
  ],
});
// The page of the tests has no sizes to observe.
const unchanging = { observe: () => undefined, unobserve: () => undefined, disconnect: () => undefined };
vi.stubGlobal('ResizeObserver', function () {
  return unchanging;
});

const props = $state({ report: reportOf(11) });
let list: object;

const figure = (id: string): string | undefined =>
  document.querySelector(`[data-finding="${id}"] .figure`)?.textContent?.trim();
const shown = (): (string | undefined)[] => ['stall.speed', 'launch.end_speed'].map(figure);

beforeEach(() => {
  vi.useFakeTimers();
  props.report = reportOf(11);
  list = mount(FindingList, { target: document.body, props });
  flushSync();
});
afterEach(async () => {
  await unmount(list);
  vi.useRealTimers();
});

const change = (value: number): void => {
  props.report = reportOf(value);
  flushSync();
};

describe('rows that are folded away', () => {
  it('are there at once', () => {
    expect(shown()).toEqual(['11\u00a0m/s', '11\u00a0m/s']);
  });

  it('follow once a report stays, those that are seen at once', () => {
    change(12);
    expect(shown()).toEqual(['12\u00a0m/s', '11\u00a0m/s']);
    vi.advanceTimersByTime(200);
    change(13);
    vi.advanceTimersByTime(200);
    flushSync();
    expect(shown()).toEqual(['13\u00a0m/s', '11\u00a0m/s']);
    vi.advanceTimersByTime(100);
    flushSync();
    expect(shown()).toEqual(['13\u00a0m/s', '13\u00a0m/s']);
  });

  it('are of the newest report as soon as they are unfolded', () => {
    change(12);
    const folded = document.querySelector('[data-finding="launch.end_speed"]')?.closest('details');
    if (!folded) throw new Error('nothing is folded');
    folded.open = true;
    folded.dispatchEvent(new Event('toggle'));
    flushSync();
    expect(shown()).toEqual(['12\u00a0m/s', '12\u00a0m/s']);
    change(14);
    expect(shown()).toEqual(['14\u00a0m/s', '14\u00a0m/s']);
  });
});
