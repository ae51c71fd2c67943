import { describe, expect, it } from 'vitest';
import { earlyReport } from '../../src/features/models/shared/earlyReport';

const values = { coreVersion: '2', findings: [{ id: 'stall.speed', value: 12 }] };

describe('what is shown while bands are computed', () => {
  it('has the new values, and the drawings of the report before', () => {
    const before = {
      coreVersion: '1',
      findings: [{ id: 'stall.speed', value: 11, bandLow: 10 }],
      curves: [{ title: 'Polar' }],
    };
    expect(earlyReport(before, values)).toEqual({ ...values, curves: [{ title: 'Polar' }] });
  });

  it('are the values alone at first', () => {
    expect(earlyReport(null, values)).toEqual(values);
  });
});
