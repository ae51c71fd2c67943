import { describe, expect, it } from 'vitest';
import { Problem } from '../../src/app/problem';
import { defaultUnits } from '../../src/app/units';
import { faultOf, faultTexts, inUnit, placeOf } from '../../src/features/models/shared/faults';

describe('faults of a document', () => {
  it('belong to the box whose value or spread is refused', () => {
    const faults = [
      { field: 'launchPlan.ramp.lengthMeters.value', description: 'must be greater than 0, got -5' },
    ];
    expect(faultOf(faults, 'launchPlan.ramp.lengthMeters')).toBe('must be greater than 0, got -5');
    expect(faultOf(faults, 'launchPlan.ramp.length')).toBeUndefined();
  });

  it('are told in the words of the boxes', () => {
    const rows: [field: string, place: string][] = [
      ['launchPlan.ramp.lengthMeters.value', 'Ramp length'],
      ['day.temperatureCelsius.value', 'Temperature'],
      ['field.strips[0].end', 'field.strips[0].end'],
      ['document', 'document'],
    ];
    for (const [field, place] of rows) expect(placeOf(field)).toBe(place);
    expect(placeOf('model.surfaces[0].stations[1].chordMeters')).toMatch(/ 1, .+ 2, Chord$/);
  });

  it('tell the unit they are in where the box shows another', () => {
    const feet = { ...defaultUnits, length: 'ft' as const };
    expect(inUnit('must be greater than 0, got -1.5', 'm', feet)).toBe(
      'in m, must be greater than 0, got -1.5',
    );
    expect(inUnit('must be greater than 0, got -5', 'm', defaultUnits)).toBe(
      'must be greater than 0, got -5',
    );
    expect(inUnit('must be at least 85000, got 1013', 'Pa', defaultUnits)).toMatch(/^in Pa, /);
    expect(inUnit('must be at most 1, got 2', '1', defaultUnits)).toBe('must be at most 1, got 2');
  });

  it('stand once in a summary, and not where its message says them', () => {
    const fault = {
      field: 'launchPlan.ramp.lengthMeters.value',
      description: 'must be greater than 0, got -5',
    };
    const whole = { field: 'document', description: 'ends too early' };
    const problem = new Problem(400, 'document: ends too early', '', [], '', [fault, fault, whole]);
    expect(faultTexts(problem)).toEqual(['Ramp length: in m, must be greater than 0, got -5']);
  });
});
