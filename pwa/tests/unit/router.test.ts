import { describe, expect, it } from 'vitest';
import { matchPath } from '../../src/app/router';

describe('matchPath', () => {
  it.each([
    ['/', 'home', {}],
    ['/models/new', 'newModel', {}],
    ['/models/m-1', 'changeModel', { model: 'm-1' }],
    ['/models/m-1/compare', 'compareModel', { model: 'm-1' }],
    ['/approvals/a1', 'approval', { approval: 'a1' }],
    ['/approvals/a1/', 'approval', { approval: 'a1' }],
    ['/approvals/a1/change', 'changeApproval', { approval: 'a1' }],
    ['/incidents/flame%2Dout', 'incident', { incident: 'flame-out' }],
    ['/nothing/here', 'missing', {}],
    ['/approvals/a1/change/more', 'missing', {}],
    ['/models//', 'models', {}],
  ])('%s', (path, screen, params) => {
    expect(matchPath(path)).toEqual({ screen, params });
  });
});
