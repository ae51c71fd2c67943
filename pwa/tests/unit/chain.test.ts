import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { defaultUnits } from '../../src/app/units';
import type { AssessmentInput, Report } from '../../src/app/wire';
import { searchQuantities, stepOf } from '../../src/features/findings/chain';
import { pathText } from '../../src/features/findings/findings';

const report = JSON.parse(readFileSync(new URL('report.fixture.json', import.meta.url), 'utf8')) as Report;
const document = JSON.parse(
  readFileSync(new URL('../../../testdata/demo/sandmartin_long_acre.json', import.meta.url), 'utf8'),
) as AssessmentInput;
const step = (ref: string): ReturnType<typeof stepOf> => stepOf(ref, report, document, defaultUnits);

describe('a step of a chain', () => {
  it('is a quantity with its number, formula and source', () => {
    expect(step('stall.speed')).toMatchObject({
      kind: 'quantity',
      title: 'Stall speed, straight flight',
      value: '15.5\u00a0m/s',
      formula: 'Vs = sqrt(2 m g / (rho S CLmax))',
      from: ['mass.takeoff', 'wing.area', 'air.density', 'lift.maximum_coefficient'],
    });
  });

  it('says words where a quantity has no number', () => {
    expect(step('lift.stall_station')).toMatchObject({ value: 'wing at 56 % of its half span' });
  });

  it('is a finding where only a finding has that id', () => {
    expect(step('balance.margin_full')).toMatchObject({ kind: 'quantity', value: '0.115' });
  });

  it.each([
    ['model.mass.emptyMassKg', 'mass, tanks empty', '9.72\u00a0kg', 'measured', '0.05\u00a0kg'],
    ['model.mass.empty_mass_kg', 'mass, tanks empty', '9.72\u00a0kg', 'measured', '0.05\u00a0kg'],
    ['model.mass.tanks[0].xMeters', 'model, mass, main, x', '0.96\u00a0m', '', ''],
    ['model.surfaces[0].stations', 'model, wing, stations', '2 entries', '', ''],
    ['model.finish', 'model, finish', 'smooth', '', ''],
    ['model.gear.retractable', 'model, gear, retractable', 'yes', '', ''],
    [
      'model.surfaces[0].stations[0].section.family',
      'model, wing, stations 1, section, family',
      'four digit',
      '',
      '',
    ],
    ['model.inertia.pitchKgSquareMeters', 'model, inertia, pitch', '', '', ''],
  ])('ends at the input %s in plain words', (ref, title, value, basis, spread) => {
    expect(step(ref)).toEqual({ kind: 'input', id: ref, title, value, basis, spread });
  });

  it('says an estimate without a basis is not said to be known', () => {
    const bare = stepOf(
      'day.temperatureCelsius',
      report,
      { day: { temperatureCelsius: { value: 14 } } },
      defaultUnits,
    );
    expect(bare).toMatchObject({ value: '14\u00a0°C', basis: 'not said' });
  });

  it('repeats what is neither quantity nor input', () => {
    expect(step('method: rolling friction')).toEqual({
      kind: 'word',
      id: 'method: rolling friction',
      title: 'rolling friction',
    });
  });

  it('never leads to itself, nor twice to the same', () => {
    const own: Report = { quantities: [{ id: 'a', value: 1, from: ['a', 'b', 'b'] }] };
    expect(stepOf('a', own, undefined, defaultUnits)).toMatchObject({ from: ['b'] });
  });

  it('every reference of a report leads somewhere', () => {
    for (const q of report.quantities ?? [])
      for (const ref of q.from ?? []) expect(step(ref).kind, ref).not.toBe('word');
  });
});

describe('search', () => {
  it.each([
    ['stall speed', ['stall.speed']],
    ['ISO 2533', ['air.density', 'air.viscosity']],
    ['half span', ['lift.stall_station']],
    ['no such thing', []],
  ])('%s', (text, ids) => {
    expect(searchQuantities(report, text).map((q) => q.id)).toEqual(ids);
  });

  it('finds everything by nothing', () => {
    expect(searchQuantities(report, '  ')).toHaveLength(report.quantities?.length ?? -1);
  });
});

it('calls entries of lists by their names where the document is at hand', () => {
  expect(pathText('model.surfaces[2].controls[0].throwUpDegrees', document)).toBe(
    'model, fin, rudder, throw up',
  );
  expect(pathText('model.surfaces[2].controls[0].throwUpDegrees')).toBe(
    'model, surfaces 3, controls 1, throw up',
  );
});
