// @vitest-environment jsdom
import { beforeEach, describe, expect, it } from 'vitest';
import type { Decision } from '../../src/features/approval/shared/conflict';
import { dropTyped, keepTyped, typedBefore } from '../../src/features/approval/shared/typed';

const decision: Decision = { etag: 'v1', reason: 'Ramp too short', conditions: 'a\nb', stage: 'open' };

describe('words typed for a decision', () => {
  beforeEach(() => {
    sessionStorage.clear();
  });

  it('come back for the same action on the same approval, without the version they rested on', () => {
    keepTyped('a1', 'return', decision);
    expect(typedBefore('a1', 'return')).toEqual({ reason: 'Ramp too short', conditions: 'a\nb' });
  });

  it('do not come back for another action, another approval, or after they were sent', () => {
    keepTyped('a1', 'return', decision);
    expect(typedBefore('a1', 'refuse')).toEqual({});
    expect(typedBefore('a2', 'return')).toEqual({});
    dropTyped('a1');
    expect(typedBefore('a1', 'return')).toEqual({});
  });

  it('are left alone when they cannot be read', () => {
    sessionStorage.setItem('pitgate.decision.a1', '{');
    expect(typedBefore('a1', 'return')).toEqual({});
  });
});
