import { describe, expect, it } from 'vitest';
import { defaultUnits } from '../../src/app/units';
import type { AssessmentInput, Finding, Remedy, Report } from '../../src/app/wire';
import {
  applied,
  changeText,
  concernsField,
  mendings,
  moves,
  noteOf,
  takenOver,
  titlesOf,
} from '../../src/features/remedy/remedy';

const document: AssessmentInput = {
  model: { radio: { antennas: [{ name: 'one' }] } },
  launchPlan: {
    stripReversed: false,
    ramp: { lengthMeters: { value: 8.5, basis: 'BASIS_MEASURED', spread: 0.02 } },
  },
  day: { surfaceState: 'SURFACE_STATE_WET' },
};
const longer: Remedy = {
  findingId: 'launch.end_speed',
  changes: [{ knob: 'ramp.length', title: 'Ramp length', from: 8.5, to: 12, unit: 'm' }],
  effort: 'REMEDY_EFFORT_EQUIPMENT',
  fixes: ['launch.end_speed'],
  edits: [{ input: 'launchPlan.ramp.lengthMeters.value', number: 12 }],
};

describe('a remedy', () => {
  it('is told from what to what, in the units of the person', () => {
    const change = longer.changes?.[0] ?? {};
    expect(changeText(change, defaultUnits)).toMatch(/^Ramp length: 8\.5\sm → 12\sm$/);
    expect(changeText(change, { ...defaultUnits, length: 'ft' })).toMatch(/27\.9\sft → 39\.4\sft/);
    expect(changeText({ title: 'Surface: dry' }, defaultUnits)).toBe('Surface: dry');
    expect(changeText({ title: 'Air', from: 20, to: 12, unit: 'C' }, defaultUnits)).toBe(
      'Air: 20\u00a0°C → 12\u00a0°C',
    );
  });

  it('says shares as percentages and small figures in units that fit them', () => {
    const share = { knob: 'fuel.load', title: 'Filling', from: 1, to: 0.482, unit: '1' };
    expect(changeText(share, defaultUnits)).toBe('Filling: 100\u00a0% → 48.2\u00a0%');
    const factor = { knob: 'approach.ratio', title: 'Approach', from: 1.3, to: 1.5, unit: '1' };
    expect(changeText(factor, defaultUnits)).toBe('Approach: 1.3 → 1.5');
    const bore = { knob: 'line.bore', title: 'Bore', from: 0.002, to: 0.004, unit: 'm' };
    expect(changeText(bore, defaultUnits)).toBe('Bore: 2\u00a0mm → 4\u00a0mm');
    const lead = { knob: 'ballast', title: 'Ballast', from: 0, to: 0.0896, unit: 'kg' };
    expect(changeText(lead, defaultUnits)).toBe('Ballast: 0\u00a0kg → 89.6\u00a0g');
  });

  it('keeps of its note what is its own', () => {
    const bands = 'By first-order bands at this value; 95 % is asked for. ';
    const others = 'Other findings are held against their bands as the document stands.';
    expect(noteOf({ note: bands + others })).toBe('');
    expect(noteOf({ note: `Holds in 97 % of 256 samples. ${bands}${others}` })).toBe(
      'Holds in 97 % of 256 samples.',
    );
    expect(noteOf({ note: 'Only with a longer leg.' })).toBe('Only with a longer leg.');
  });

  it('is applied to a copy: numbers, words, yes or no, new rows, and what is taken away', () => {
    const remedy: Remedy = {
      edits: [
        ...(longer.edits ?? []),
        { input: 'launchPlan.stripReversed', flag: true },
        { input: 'day.surfaceState', text: 'SURFACE_STATE_DRY' },
        { input: 'model.radio.antennas[1].name', text: 'added' },
        { input: 'launchPlan.ramp.lengthMeters.spread' },
      ],
    };
    const before = JSON.stringify(document);
    expect(applied(document, remedy)).toEqual({
      model: { radio: { antennas: [{ name: 'one' }, { name: 'added' }] } },
      launchPlan: { stripReversed: true, ramp: { lengthMeters: { value: 12, basis: 'BASIS_MEASURED' } } },
      day: { surfaceState: 'SURFACE_STATE_DRY' },
    });
    expect(JSON.stringify(document)).toBe(before);
    expect(applied(document, { changes: longer.changes ?? [] })).toBeUndefined();
  });

  it('takes away the last rows of a list', () => {
    const edits = [{ input: 'model.radio.antennas[0]' }];
    expect(applied(document, { edits })?.model?.radio?.antennas).toEqual([]);
  });

  it('is taken over as estimated, since nobody measured it', () => {
    expect(takenOver(document, longer)?.launchPlan?.ramp?.lengthMeters).toEqual({
      value: 12,
      basis: 'BASIS_ESTIMATED',
    });
  });

  it('says when it concerns the field', () => {
    expect(concernsField(longer)).toBe(false);
    expect(
      concernsField({ edits: [{ input: 'field.strips[0].surface', text: 'SURFACE_SHORT_GRASS' }] }),
    ).toBe(true);
  });
});

describe('the remedies of a report', () => {
  const report: Report = {
    findings: [
      { id: 'launch.end_speed', title: 'End speed', verdict: 'VERDICT_FAILS' },
      { id: 'landing.distance', title: 'Landing', verdict: 'VERDICT_FAILS' },
    ],
    remedies: [
      longer,
      { findingId: 'landing.distance', note: 'Tried: mass.' },
      { ...longer, effort: 'REMEDY_EFFORT_REBUILD' },
    ],
  };

  it('stand by finding; one that nothing helps says so', () => {
    const [speed, landing] = mendings(report);
    expect([speed?.finding?.title, speed?.ways.length, speed?.note]).toEqual(['End speed', 2, '']);
    expect([landing?.ways, landing?.note]).toEqual([[], 'Tried: mass.']);
    expect(mendings({})).toEqual([]);
    expect(titlesOf(report, ['landing.distance', 'x'])).toBe('Landing; x');
  });
});

describe('what a change moves', () => {
  const f = (id: string, verdict: Finding['verdict'], value: number): Finding => ({
    id,
    ...(verdict ? { verdict } : {}),
    value,
    bandLow: value - 1,
    bandHigh: value + 1,
  });
  const before: Report = {
    findings: [
      f('a', 'VERDICT_FAILS', 1),
      f('b', 'VERDICT_HOLDS', 2),
      f('c', 'VERDICT_HOLDS', 3),
      f('d', 'VERDICT_HOLDS', 4),
    ],
  };

  it('shows changed verdicts first, then what moves far, and counts what moves a little', () => {
    const after: Report = {
      findings: [
        f('d', 'VERDICT_HOLDS', 4.01),
        f('c', 'VERDICT_HOLDS', 4),
        f('b', 'VERDICT_HOLDS', 2),
        f('a', 'VERDICT_HOLDS', 1.1),
      ],
    };
    const found = moves(before, after);
    expect(found.shown.map((m) => m.id)).toEqual(['a', 'c']);
    expect([found.verdicts, found.better, found.still]).toEqual([1, 1, 1]);
    expect(moves(after, before).better).toBe(0);
    expect([found.shown[0]?.before.value, found.shown[0]?.after.value]).toEqual([1, 1.1]);
  });

  it('is nothing for the same report', () => {
    expect(moves(before, before)).toEqual({ shown: [], verdicts: 0, better: 0, still: 0 });
  });

  it('shows a value that comes or goes', () => {
    const gone: Finding = { id: 'b', verdict: 'VERDICT_HOLDS' };
    expect(moves(before, { findings: [gone] }).shown.map((m) => m.id)).toEqual(['b']);
  });
});
