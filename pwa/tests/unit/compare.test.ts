import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { AssessmentInput, Report } from '../../src/app/wire';
import {
  answerOf,
  lackOf,
  questions,
  scaleOf,
  toldOn,
  wayOf,
} from '../../src/features/models/shared/compare';

const demo = (name: string): AssessmentInput =>
  JSON.parse(
    readFileSync(new URL(`../../../testdata/demo/${name}.json`, import.meta.url), 'utf8'),
  ) as AssessmentInput;
const redshank = demo('redshank_quarry_top');
const sandmartin = demo('sandmartin_long_acre');

describe('ways of launching', () => {
  it('keep model, field and day and change the launch alone', () => {
    const way = wayOf(redshank, 'LAUNCH_METHOD_HAND');
    expect(way.input.launchPlan?.method).toBe('LAUNCH_METHOD_HAND');
    for (const part of ['model', 'field', 'day'] as const) expect(way.input[part]).toBe(redshank[part]);
    expect(redshank.launchPlan?.method).toBe('LAUNCH_METHOD_RAMP');
  });

  it('have their numbers or name every one that is missing', () => {
    expect(wayOf(redshank, 'LAUNCH_METHOD_RAMP').lacks).toEqual([]);
    expect(wayOf(redshank, 'LAUNCH_METHOD_BUNGEE').lacks).toEqual(['bungee stiffness', 'bungee stretch']);
    expect(wayOf(redshank, 'LAUNCH_METHOD_HAND').lacks).toEqual(['throw speed', 'height of the hand']);
    expect(wayOf(redshank, 'LAUNCH_METHOD_WHEELS').lacks).toContain('a strip on this field');
    expect(wayOf(sandmartin, 'LAUNCH_METHOD_WHEELS').lacks).toEqual([]);
  });

  it('run a strip into the wind where the plan names no direction', () => {
    const blowing = (from: number): AssessmentInput => ({
      ...sandmartin,
      launchPlan: { method: 'LAUNCH_METHOD_HAND' },
      day: { ...sandmartin.day, windDirectionDegrees: { value: from } },
    });
    expect(wayOf(blowing(70), 'LAUNCH_METHOD_WHEELS').place).toBe('06');
    expect(wayOf(blowing(250), 'LAUNCH_METHOD_WHEELS').place).toBe('24');
    expect(wayOf(blowing(250), 'LAUNCH_METHOD_WHEELS').input.launchPlan?.stripReversed).toBe(true);
    expect(wayOf(sandmartin, 'LAUNCH_METHOD_WHEELS').place).toBe('06');
  });

  it('start from the strip where the field has no launch spot', () => {
    const way = wayOf(sandmartin, 'LAUNCH_METHOD_HAND');
    expect(way.place).toBe('the start of 06');
    expect(way.input.launchPlan?.launchSpot).toBe('the start of 06');
    const [spot] = way.input.field?.launchSpots ?? [];
    expect(spot?.position).toEqual(sandmartin.field?.strips?.[0]?.start);
    expect(spot?.headingDegrees).toBeCloseTo(60, 1);
    expect(sandmartin.field?.launchSpots ?? []).toEqual([]);
    expect(wayOf({}, 'LAUNCH_METHOD_HAND').lacks).toContain('a launch spot on this field');
  });

  it('need no stiffness beside a pull test', () => {
    const cord = (bungee: object) =>
      wayOf({ ...redshank, launchPlan: { ...redshank.launchPlan, bungee } }, 'LAUNCH_METHOD_BUNGEE').lacks;
    expect(cord({}).join()).toContain('stiffness');
    expect(cord({ pullTest: [{ stretchMeters: 20, forceNewtons: 200 }] }).join()).not.toContain('stiffness');
  });

  it('leave a heading that was given for another way', () => {
    const aimed = { ...redshank, launchPlan: { ...redshank.launchPlan, headingDegrees: 90 } };
    expect(wayOf(aimed, 'LAUNCH_METHOD_RAMP').input.launchPlan?.headingDegrees).toBe(90);
    expect(wayOf(aimed, 'LAUNCH_METHOD_HAND').input.launchPlan?.headingDegrees).toBeUndefined();
  });
});

describe('answers side by side', () => {
  const report: Report = {
    findings: [
      { id: 'launch.end_speed', value: 0.78, limit: 1.1, unit: '1' },
      { id: 'launch.sink', unit: 'm', missing: ['launchPlan.bungee', 'launchPlan.bungee'] },
    ],
    quantities: [{ id: 'launch.screen_distance', value: 87, unit: 'm' }],
  };
  const [speed, distance] = questions as [(typeof questions)[0], (typeof questions)[0]];

  it('are findings, or a bare number without a limit', () => {
    expect(answerOf(report, speed)?.limit).toBe(1.1);
    expect(answerOf(report, distance)).toMatchObject({
      value: 87,
      unit: 'm',
      limitSense: 'LIMIT_SENSE_NONE',
    });
    expect(answerOf({}, distance)).toBeUndefined();
    expect(answerOf({ findings: [{ id: 'liftoff.margin', value: 1.3 }] }, speed)?.value).toBe(1.3);
  });

  it('share a scale that holds every value, band and limit', () => {
    const [low, high] = scaleOf([
      { value: 2, bandLow: 1, bandHigh: 4, limit: 3 },
      undefined,
      { value: 9 },
    ]) ?? [NaN, NaN];
    expect(low).toBeLessThan(1);
    expect(high).toBeGreaterThan(9);
    expect(scaleOf([undefined, {}])).toBeUndefined();
  });

  it('tell nothing for a value that would not show on the scale', () => {
    expect(toldOn(0.000001, [0, 2])).toBe(0);
    expect(toldOn(-0.01, [0, 2])).toBe(-0.01);
  });

  it('name what is missing once', () => {
    expect(lackOf(report, redshank)).toEqual(['launch plan, bungee']);
  });
});
