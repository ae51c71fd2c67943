import { describe, expect, it } from 'vitest';
import { Problem } from '../../src/app/problem';
import { spreadWords } from '../../src/app/spreadWords';
import { defaultUnits } from '../../src/app/units';
import type { Finding, Report } from '../../src/app/wire';
import { inputText, oddsText, ofHundred, topShares } from '../../src/features/findings/findings';
import { partsOf } from '../../src/features/spread/box';
import { Sampled } from '../../src/features/spread/sampled.svelte';
import { advices, bandText, byMedian, sorted } from '../../src/features/spread/spread';
import type { Progress } from '../../src/worker/answer';
import type { Answered } from '../../src/worker/nearest';

const finding = (of: Partial<Finding>): Finding => ({ id: 'f', title: 'Finding', unit: 'm', ...of });

describe('a probability', () => {
  it('is so many of 100, never rounded up to all or down to none', () => {
    const said = [0, 0.0004, 0.004, 0.5, 0.934, 0.98, 0.9941, 0.99999, 1].map(ofHundred);
    expect(said).toEqual(['0', '0.1', '0.4', '50', '93', '98', '99.4', '99.9', '100']);
  });

  it('is told against what the class asks for, in words', () => {
    const held = { holdsProbability: 0.93, requiredProbability: 0.99 };
    expect(oddsText(finding({ ...held, findingClass: 'FINDING_CLASS_THIRD_PARTY' }))).toBe(
      'Holds in 93 of 100; 99 asked for: other people.',
    );
    expect(oddsText(finding({ ...held, findingClass: 'FINDING_CLASS_MODEL_LOSS' }))).toContain('the model');
    expect(oddsText(finding({ value: 1 }))).toBeUndefined();
  });
});

describe('what the samples say', () => {
  it('is sorted by whether a finding holds often enough', () => {
    const report: Report = {
      findings: [
        finding({ id: 'a', verdict: 'VERDICT_FAILS' }),
        finding({ id: 'b', verdict: 'VERDICT_TIGHT', holdsProbability: 0.9 }),
        finding({ id: 'c', verdict: 'VERDICT_UNKNOWN' }),
        finding({ id: 'd', verdict: 'VERDICT_HOLDS', holdsProbability: 1 }),
        finding({ id: 'e', verdict: 'VERDICT_HOLDS' }),
        finding({ id: 'f', verdict: 'VERDICT_TIGHT', holdsProbability: 0.99, requiredProbability: 0.99 }),
      ],
    };
    const { open, unproven, holding, without } = sorted(report);
    expect([open, unproven, holding, without].map((l) => l.map((f) => f.id).join(''))).toEqual([
      'ab',
      'f',
      'd',
      'ce',
    ]);
  });

  it('shows the median, and the band in the units of the person', () => {
    const f = byMedian(finding({ value: 10, median: 11, bandLow: 9, bandHigh: 13 }));
    expect(f.value).toBe(11);
    expect(bandText(f, { ...defaultUnits, length: 'ft' })).toMatch(/29\.5\sft to 42\.7\sft/);
    expect(byMedian(finding({ value: 10 })).value).toBe(10);
    expect(bandText(finding({ value: 10 }), defaultUnits)).toBe('');
  });

  it('names five inputs at most, and none that hardly counts', () => {
    const spreadShares = [0.4, 0.3, 0.1, 0.08, 0.06, 0.05, 0.001].map((shareRatio, i) => ({
      input: `model.${String(i)}`,
      shareRatio,
    }));
    expect(topShares(finding({ spreadShares }))).toHaveLength(5);
    expect(topShares(finding({ spreadShares: spreadShares.slice(5) }))).toHaveLength(1);
  });

  it('calls inputs, scales and methods by words', () => {
    const doc = { field: { obstacles: [{ name: 'hedge' }] } };
    expect(inputText('field.obstacles[0].heightMeters', doc)).toBe('field, hedge, height');
    expect(inputText('method: greatest lift')).toBe('method: greatest lift');
    expect(inputText('scale: items')).toBe('the scale on which the items were weighed');
  });
});

describe('the measurement worth taking', () => {
  const report: Report = {
    findings: [finding({ id: 'a', title: 'Climb' })],
    measureNext: [
      { input: 'day.windSpeedMetersPerSecond', title: 'Wind', how: 'Hold it up.', findingIds: ['a', 'x'] },
      { input: 'model.mass.emptyMassKg', shareRatio: 0.3 },
    ],
  };

  it('names the findings that it settles, or the share that it carries', () => {
    const [wind, mass] = advices(report, {});
    expect(wind).toMatchObject({ title: 'Wind', settles: ['Climb', 'x'], how: 'Hold it up.' });
    expect(mass).toMatchObject({ title: 'mass, tanks empty', settles: [], share: 0.3 });
    expect(advices({}, {})).toEqual([]);
  });

  it('leads through every part to its box', () => {
    expect(partsOf('model.engines[0].staticThrustNewtons')).toEqual([
      'model',
      'model.engines',
      'model.engines.0',
    ]);
  });
});

/** A sampler that the test answers. */
class Bench {
  tell: Progress = () => undefined;
  answer: (report: Report) => void = () => undefined;
  refuse: (error: unknown) => void = () => undefined;
  signal: AbortSignal | undefined;
  readonly sample = (
    _: object,
    __: object,
    signal: AbortSignal,
    tell: Progress,
  ): Promise<Answered<Report>> => {
    [this.signal, this.tell] = [signal, tell];
    return new Promise((resolve, reject) => {
      this.answer = (answer) => {
        resolve({ answer, place: 'device' });
      };
      this.refuse = reject;
    });
  };
}

describe('a run', () => {
  const draw = { samples: 64, seed: 0 };

  it('is empty, runs with progress and is done', async () => {
    const bench = new Bench();
    const run = new Sampled(bench.sample);
    expect([run.state, run.report]).toEqual(['empty', null]);
    const ended = run.run({}, draw);
    bench.tell(3, 70);
    expect([run.state, run.done, run.total]).toEqual(['running', 3, 70]);
    bench.answer({ coreVersion: '1' });
    await ended;
    expect([run.state, run.report?.coreVersion]).toEqual(['done', '1']);
  });

  it('is cancelled at once, hears nothing after, and keeps what was drawn before', async () => {
    const bench = new Bench();
    const run = new Sampled(bench.sample);
    const first = run.run({ day: {} }, draw);
    bench.answer({ coreVersion: '1' });
    await first;
    const second = run.run({}, draw);
    run.cancel();
    expect([run.state, bench.signal?.aborted]).toEqual(['cancelled', true]);
    bench.tell(5, 6);
    bench.answer({ coreVersion: '2' });
    await second;
    expect([run.state, run.done, run.report?.coreVersion, run.asked]).toEqual([
      'cancelled',
      0,
      '1',
      { day: {} },
    ]);
  });

  it('says why it failed', async () => {
    const bench = new Bench();
    const run = new Sampled(bench.sample);
    const ended = run.run({}, draw);
    bench.refuse(new Problem(400, 'the document has faults', ''));
    await ended;
    expect([run.state, run.problem?.message]).toEqual(['failed', 'the document has faults']);
  });
});

it('every state of a run has words', () => {
  for (const of of [spreadWords, spreadWords.remedy])
    for (const word of [of.run, of.again, of.running, of.empty, of.cancelled, of.failed])
      expect(word).not.toBe('');
});
