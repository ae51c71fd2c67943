import { describe, expect, it, vi } from 'vitest';
import type { RulePackPreview } from '../../src/app/wire';
import { PackPreview } from '../../src/features/rule-packs/shared/packPreview.svelte';

const at = (done: number, state = 'RUNNING'): RulePackPreview => ({
  name: 'clubs/larkmoor/rulePackPreviews/p',
  state: `RULE_PACK_PREVIEW_STATE_${state}` as NonNullable<RulePackPreview['state']>,
  approvalCount: 300,
  doneCount: done,
});
const asked = (...answers: (RulePackPreview | Error)[]): (() => Promise<RulePackPreview>) => {
  let n = 0;
  return () => {
    const next = answers[Math.min(n++, answers.length - 1)];
    return next instanceof Error || next === undefined
      ? Promise.reject(next ?? new Error())
      : Promise.resolve(next);
  };
};
const still = (ms: number): Promise<void> => new Promise((go) => setTimeout(go, ms));

describe('a preview that the server computes', () => {
  it('is followed until it is done, past a lost answer', async () => {
    const failed = vi.fn();
    const get = asked(at(100), new Error('lost'), at(200), at(300, 'DONE'));
    const preview = new PackPreview({ begin: asked(at(0)), get, cancel: asked(at(0)) }, failed, 1);
    await preview.begin();
    expect([preview.running, preview.done]).toEqual([true, false]);
    await vi.waitFor(() => {
      expect(preview.done).toBe(true);
    });
    expect(preview.now?.doneCount).toBe(300);
    expect(failed).toHaveBeenCalledOnce();
  });

  it('is cancelled and asked for no more', async () => {
    const get = vi.fn(asked(at(100)));
    const cancel = asked(at(120, 'CANCELLED'));
    const preview = new PackPreview({ begin: asked(at(0)), get, cancel }, vi.fn(), 5);
    await preview.begin();
    await preview.cancel();
    await still(30);
    expect([preview.running, preview.done, preview.now?.doneCount]).toEqual([false, false, 120]);
    expect(get).not.toHaveBeenCalled();
  });

  it('goes on without the page once that is left', async () => {
    const get = vi.fn(asked(at(100)));
    const preview = new PackPreview({ begin: asked(at(0)), get, cancel: asked(at(0)) }, vi.fn(), 5);
    await preview.begin();
    preview.stop();
    await still(30);
    expect(get).not.toHaveBeenCalled();
  });
});
