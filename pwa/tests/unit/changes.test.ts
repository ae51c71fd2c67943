import { describe, expect, it } from 'vitest';
import type { VerdictChanges } from '../../src/app/wire';
import { words } from '../../src/app/words';
import { changeText, outcomeText, since } from '../../src/features/verdict-changes/changes';

const at = (createTime: string): VerdictChanges => ({ name: createTime, createTime });

describe('changed verdicts', () => {
  it('say from what to what, and what was or is not asked', () => {
    const text = changeText({
      findingId: 'rule.a.mass',
      title: 'Greatest mass',
      from: 'VERDICT_UNSPECIFIED',
      to: 'VERDICT_FAILS',
    });
    expect(text).toContain('Greatest mass');
    expect(text).toContain(words.changes.absent);
    expect(text).toContain(words.verdict.VERDICT_FAILS);
  });

  it('say whether the approval lapsed, stands, or could not be computed', () => {
    expect(outcomeText({ name: 'a', lapsed: true })).toBe(words.changes.lapsed);
    expect(outcomeText({ name: 'a' })).toBe(words.changes.stands);
    expect(outcomeText({ name: 'a', failure: 'span: missing' })).toContain('span: missing');
  });

  it('leave out what an answer computed later has overtaken, by time and not by spelling', () => {
    const changes = [at('2026-11-25T10:00:00.5Z'), at('2026-11-25T10:00:00Z')];
    expect(since(changes, '2026-11-25T10:00:00.250Z').map((c) => c.name)).toEqual(['2026-11-25T10:00:00.5Z']);
    expect(since(changes, undefined)).toHaveLength(2);
  });

  it('stay beside the answer that they brought, until another takes its place', () => {
    const brought = { ...at('2026-11-25T10:00:00Z'), assessment: 'clubs/larkmoor/assessments/b' };
    const all = [brought, at('2026-11-25T09:00:00Z')];
    expect(since(all, '2026-11-25T10:00:00Z', 'clubs/larkmoor/assessments/b')).toEqual([brought]);
    expect(since(all, '2026-11-25T10:00:00Z', 'clubs/larkmoor/assessments/c')).toEqual([]);
  });
});
