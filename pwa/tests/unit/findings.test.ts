import { describe, expect, it } from 'vitest';
import { defaultUnits } from '../../src/app/units';
import type { Finding, Report } from '../../src/app/wire';
import { words } from '../../src/app/words';
import {
  cautionsOf,
  countsText,
  inWords,
  limitText,
  measureNext,
  pathText,
  sentenceOf,
  split,
  titleOf,
  waitedFor,
} from '../../src/features/findings/findings';

const finding: Finding = {
  id: 'launch.clearance',
  title: 'Clearance over the near gorse bank',
  verdict: 'VERDICT_FAILS',
  value: 1.4,
  unit: 'm',
  bandLow: 0.7,
  bandHigh: 2.1,
  limit: 3,
  limitSense: 'LIMIT_SENSE_AT_LEAST',
};

describe('words for a finding', () => {
  it('says the deciding numbers', () => {
    expect(sentenceOf(finding, defaultUnits).replace(/\u00a0/g, ' ')).toBe(
      'Clearance over the near gorse bank: 1.4 m (0.7 m to 2.1 m), limit at least 3 m: fails.',
    );
  });

  it('says unknown where no value is', () => {
    expect(sentenceOf({ title: 'Reserve', verdict: 'VERDICT_UNKNOWN' }, defaultUnits)).toBe(
      'Reserve: unknown.',
    );
  });

  it('takes a rule’s title as a part of a sentence', () => {
    expect(titleOf({ title: 'The model weighs less than 25 kg.' })).toBe('The model weighs less than 25 kg');
    expect(titleOf(undefined)).toBe('');
  });

  it('puts paths of the document into words', () => {
    expect(inWords('No figure: missing is model.engines[0].runDownSeconds.')).toBe(
      'No figure: missing is “model, engines 1, run down”.',
    );
    expect(inWords('The model stays in the field.')).toBe('The model stays in the field.');
  });

  it('names what most unknown findings wait for', () => {
    const unknown = (missing: string[]): Finding => ({ verdict: 'VERDICT_UNKNOWN', missing });
    const held: Finding = { verdict: 'VERDICT_HOLDS', missing: ['day.windMean'] };
    expect(waitedFor([unknown(['a', 'b']), unknown(['b']), held])).toEqual([
      { input: 'b', count: 2 },
      { input: 'a', count: 1 },
    ]);
  });

  it('words each kind of limit', () => {
    const of = (more: Partial<Finding>): string =>
      limitText({ ...finding, unit: '1', ...more }, defaultUnits);
    expect(of({})).toBe('at least 3');
    expect(of({ limitSense: 'LIMIT_SENSE_AT_MOST' })).toBe('at most 3');
    expect(of({ limitSense: 'LIMIT_SENSE_WITHIN', limit: 0.05, upperLimit: 0.2 })).toBe('0.05 to 0.2');
    expect(of({ limitSense: 'LIMIT_SENSE_NONE' })).toBe(words.findings.noLimit);
  });

  it('counts what the wire leaves out as none', () => {
    expect(countsText({ failsCount: 2 })).toBe('2 fail · 0 tight · 0 unknown · 0 hold');
    expect(countsText(undefined)).toBe(words.notAssessed);
  });
});

describe('report', () => {
  const report: Report = {
    findings: [
      {
        ...finding,
        spreadShares: [
          { input: 'model.mass.empty_mass_kg', shareRatio: 0.3 },
          { input: 'stall method', shareRatio: 0.6 },
        ],
      },
      {
        ...finding,
        id: 'b',
        verdict: 'VERDICT_TIGHT',
        spreadShares: [{ input: 'model.engines[0].static_thrust_newtons', shareRatio: 0.5 }],
      },
      {
        ...finding,
        id: 'c',
        verdict: 'VERDICT_HOLDS',
        spreadShares: [{ input: 'day.temperature_celsius', shareRatio: 1 }],
      },
    ],
  };

  it('keeps the order and sets apart what holds', () => {
    expect(split(report).own.open.map((f) => f.id)).toEqual(['launch.clearance', 'b']);
    expect(split(report).own.holding.map((f) => f.id)).toEqual(['c']);
  });

  it('names the input that decides most of what does not hold, never a method or a holding finding', () => {
    expect(measureNext(report)).toBe('model.engines[0].static_thrust_newtons');
    expect(measureNext({ findings: [] })).toBeUndefined();
  });

  it('carries cautions always', () => {
    expect(cautionsOf(undefined)).toEqual(words.cautions);
    expect(cautionsOf({ cautions: ['look'] })).toEqual(['look']);
  });
});

it('writes paths as people read them', () => {
  expect(pathText('model.engines[0].static_thrust_newtons')).toBe('static thrust, full power');
  expect(pathText('model.gear.wheels[1].diameterMeters')).toBe('model, gear, wheels 2, diameter');
});
