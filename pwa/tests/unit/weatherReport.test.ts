import { describe, expect, it } from 'vitest';
import { Problem } from '../../src/app/problem';
import { laterWind } from '../../src/features/models/shared/rows';
import {
  filledBoxes,
  notUnderstood,
  readable,
  stayingBoxes,
  withReport,
} from '../../src/features/models/shared/weatherReport';

const said = {
  metar: 'METAR XLRK 161020Z 05006KT 9999 14/05 Q1019',
  time: '2026-05-16T10:20:00Z',
  windSpeedMetersPerSecond: { value: 3.087, basis: 'BASIS_MEASURED' as const },
  temperatureCelsius: { value: 14, basis: 'BASIS_MEASURED' as const },
};

describe('a report put over the day', () => {
  it('fills what it says and keeps what it leaves out, the planned time included', () => {
    const day = withReport(
      {
        time: '2026-05-16T12:00:00Z',
        frost: 'FROST_NONE',
        temperatureCelsius: { value: 9, basis: 'BASIS_ESTIMATED' },
        gustSpeedMetersPerSecond: { value: 5 },
      },
      said,
    );
    expect(day.time).toBe('2026-05-16T12:00:00Z');
    expect(day.frost).toBe('FROST_NONE');
    expect(day.gustSpeedMetersPerSecond).toEqual({ value: 5 });
    expect(day.temperatureCelsius).toEqual({ value: 14, basis: 'BASIS_MEASURED' });
    expect(day.metar).toBe(said.metar);
  });

  it('gives an empty day everything', () => {
    expect(withReport(undefined, said)).toEqual(said);
    expect(withReport({ frost: 'FROST_NONE' }, undefined)).toEqual({ frost: 'FROST_NONE' });
  });

  it.each([
    [3.086666666666667, 0.39850725, 3.087, 0.399],
    [0.5457203542287519, 0.04, 0.5457, 0.04],
    [101900, 50, 101900, 50],
    [914.4, 30, 914.4, 30],
    [50, 7.88675, 50, 7.89],
  ])('%d with spread %d is read as %d', (value, spread, shown, about) => {
    expect(readable({ value, spread })).toEqual({ value: shown, spread: about });
    expect(Math.abs(shown - value)).toBeLessThanOrEqual(spread / 100);
  });

  it('leaves a value without a spread as it is', () => {
    expect(readable({ value: 1 / 3 })).toEqual({ value: 1 / 3 });
    expect(readable({ value: 1 / 3, spread: 0 })).toEqual({ value: 1 / 3, spread: 0 });
  });

  it('names the filled boxes in the order of the form', () => {
    expect(filledBoxes(said)).toEqual(['temperature', 'wind, mean']);
    expect(filledBoxes(undefined)).toEqual([]);
    expect(filledBoxes({ qnhPascals: { value: 101900 } })).toEqual(['pressure at sea level (QNH)']);
  });

  it('names what stays from before because the report says nothing of it', () => {
    const before = { gustSpeedMetersPerSecond: { value: 5 }, temperatureCelsius: { value: 9 } };
    expect(stayingBoxes(before, said)).toEqual(['wind, highest gust']);
    expect(stayingBoxes(undefined, said)).toEqual([]);
  });

  it('says which group was not understood, and leaves other trouble to others', () => {
    const refused = new Problem(400, 'The report was not read.', 'r', [], '', [
      { field: 'text', description: 'group "05K6KT" at character 20: not a wind' },
    ]);
    expect(notUnderstood(refused)).toEqual(['group "05K6KT" at character 20: not a wind']);
    expect(notUnderstood(new Problem(400, 'No report.', 'r'))).toEqual(['No report.']);
    expect(notUnderstood(new Problem(0, 'offline', ''))).toBeUndefined();
    expect(notUnderstood(new Error('other'))).toBeUndefined();
  });
});

describe('later winds', () => {
  it('begin an hour after the last one with a time', () => {
    expect(laterWind([])).toEqual({});
    expect(laterWind([{ time: '2026-05-16T23:30:00+01:00' }])).toEqual({ time: '2026-05-17T00:30:00+01:00' });
    expect(laterWind([{ time: 'soon' }])).toEqual({});
  });
});
