import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { defaultUnits } from '../../src/app/units';
import type {
  Approval,
  AssessmentInput,
  Comparison,
  Field,
  Finding,
  InputDifference,
} from '../../src/app/wire';
import {
  byPart,
  figuresOf,
  nameOf,
  restsOn,
  splitMoves,
  valueText,
  verdictText,
} from '../../src/features/compare/shared/comparison';
import {
  documentOf,
  fieldOf,
  firstSides,
  flightChoices,
  modelChoices,
  type Sources,
} from '../../src/features/compare/shared/sides';
import { earlierSubmissions } from '../../src/features/compare/shared/submissions';
import { blank, type Draft } from '../../src/features/models/shared/draft';

const demo = (name: string): AssessmentInput =>
  JSON.parse(
    readFileSync(new URL(`../../../testdata/demo/${name}.json`, import.meta.url), 'utf8'),
  ) as AssessmentInput;
const redshank = demo('redshank_quarry_top');
const sandmartin = demo('sandmartin_long_acre');
const feet = { ...defaultUnits, length: 'ft' as const, mass: 'lb' as const };

const ramp: InputDifference = {
  kind: 'CHANGE_KIND_CHANGED',
  fromPath: 'launchPlan.ramp.lengthMeters',
  toPath: 'launchPlan.ramp.lengthMeters',
  from: { quantity: { value: 8.5, basis: 'BASIS_ESTIMATED', spread: 0.2 } },
  to: { quantity: { value: 20, basis: 'BASIS_MEASURED' } },
  quantityParts: ['value', 'basis', 'spread'],
};

describe('a difference in words', () => {
  it('says of a quantity what differs, in the units of the reader', () => {
    const path = 'launchPlan.ramp.lengthMeters';
    expect(valueText(ramp.from, ramp, path, defaultUnits)).toBe('8.5\u00a0m, estimated, ± 0.2\u00a0m');
    expect(valueText(ramp.to, ramp, path, feet)).toBe('65.6\u00a0ft, measured, no spread of its own');
    expect(valueText(ramp.to, { ...ramp, quantityParts: ['basis'] }, path, defaultUnits)).toBe('measured');
  });

  it('says of a quantity that was added all that is known', () => {
    const added: InputDifference = { kind: 'CHANGE_KIND_ADDED', toPath: 'model.mass.emptyMassKg' };
    const value = { quantity: { value: 4.5359237, basis: 'BASIS_MEASURED' as const } };
    expect(valueText(value, added, 'model.mass.emptyMassKg', feet)).toBe('10\u00a0lb, measured');
  });

  it('says choices, truths, lists and whole parts as words', () => {
    const d = (kind: InputDifference['kind']): InputDifference => ({ kind });
    const say = (
      value: object,
      path: string,
      kind: InputDifference['kind'] = 'CHANGE_KIND_CHANGED',
    ): string => valueText(value, d(kind), path, defaultUnits);
    expect(say({ text: 'SURFACE_STATE_WET' }, 'day.surfaceState')).toBe('wet');
    expect(say({ truth: false }, 'model.fuelSystem.airTrap')).toBe('no');
    expect(say({ number: 0 }, 'model.surfaces[0].stations[0].twistDegrees')).toBe('0°');
    expect(say({ partJson: '[{},{}]', entryCount: 2 }, 'field.flyingArea.corners')).toBe('2 entries');
    expect(say({ partJson: '{}' }, 'model.gear')).toBe('the whole part');
    expect(
      say({ partJson: '["Barn","Hedge"]', entryCount: 2 }, 'field.obstacles', 'CHANGE_KIND_REORDERED'),
    ).toBe('Barn, Hedge');
    expect(valueText(undefined, d('CHANGE_KIND_ADDED'), 'model.gear', defaultUnits)).toBe('not given');
  });

  it('is named by the document it stands in', () => {
    const first = redshank.model?.surfaces?.[0]?.name ?? '';
    const removed = {
      kind: 'CHANGE_KIND_REMOVED' as const,
      fromPath: 'model.surfaces[0].stations[1].chordMeters',
    };
    expect(nameOf(removed, redshank, {})).toBe(`${first}, stations 2, chord`);
    expect(nameOf(ramp, redshank, redshank)).toBe('ramp length');
  });

  it('stands under its part of the document', () => {
    const day = { fromPath: 'day.frost' };
    expect(byPart([ramp, day, ramp]).map((g) => [g.part, g.list.length])).toEqual([
      ['Launch plan', 2],
      ['Day', 1],
    ]);
  });
});

describe('a finding that moved', () => {
  const finding = (verdict: Finding['verdict'], value: number, margin: number): Finding => ({
    id: 'launch.end_speed',
    title: 'End speed',
    unit: 'm/s',
    value,
    margin,
    limit: 20,
    ...(verdict ? { verdict } : {}),
  });
  const move = {
    findingId: 'launch.end_speed',
    moved: true,
    verdictChanged: true,
    from: finding('VERDICT_FAILS', 18, -2),
    to: finding('VERDICT_HOLDS', 23, 3),
    changedInputs: ['launchPlan.ramp.lengthMeters'],
  };
  const comparison: Comparison = { differences: [ramp], moves: [move, { findingId: 'stall.speed' }] };

  it('stands apart from those that did not', () => {
    const parts = splitMoves(comparison);
    expect(parts.moved.map((m) => m.findingId)).toEqual(['launch.end_speed']);
    expect(parts.still.map((m) => m.findingId)).toEqual(['stall.speed']);
  });

  it('says verdicts and figures of both', () => {
    expect(verdictText(move)).toBe('fails → holds');
    expect(verdictText({ ...move, verdictChanged: false })).toBe('still holds');
    expect(verdictText({ verdictChanged: true, to: move.to })).toBe('not asked → holds');
    const kmh = { ...defaultUnits, speed: 'km/h' as const };
    expect(figuresOf(move, kmh).map((l) => [l.name, l.from, l.to])).toEqual([
      ['Value', '64.8\u00a0km/h', '82.8\u00a0km/h'],
      ['Margin', '−7.2\u00a0km/h', '10.8\u00a0km/h'],
    ]);
    const stricter = { ...move, to: { ...move.to, limit: 22 } };
    expect(figuresOf(stricter, defaultUnits).at(-1)?.name).toBe('Limit');
  });

  it('names the changed inputs that it reads, or says that there are none', () => {
    expect(restsOn(move, comparison, redshank, redshank)).toBe('It rests on: ramp length.');
    expect(restsOn({ ...move, changedInputs: [] }, comparison, redshank, redshank)).toContain('None of');
    const many = Array.from({ length: 7 }, (_, i) => ({ toPath: `model.mass.items[${String(i)}].massKg` }));
    const crowded = { ...move, changedInputs: many.map((d) => d.toPath) };
    expect(restsOn(crowded, { differences: many }, {}, {})).toContain('and 2 more');
  });
});

describe('the two sides', () => {
  const fields: Field[] = [
    { name: 'clubs/l/fields/a', displayName: 'Long Acre', description: sandmartin.field ?? {} },
    { name: 'clubs/l/fields/q', displayName: 'Quarry Top', description: redshank.field ?? {} },
  ];
  const draft: Draft = {
    ...blank(),
    doc: {
      model: redshank.model ?? {},
      launchPlan: redshank.launchPlan ?? {},
      day: redshank.day ?? {},
    },
    field: 'clubs/l/fields/q',
  };
  const sources: Sources = {
    models: modelChoices(
      [
        { number: 2, description: {} },
        { number: 1, description: {} },
      ],
      draft,
    ),
    flights: flightChoices('clubs/l/models/m', [], draft),
    fields,
  };

  it('start with the last revision against the draft', () => {
    expect(firstSides(sources)).toMatchObject({ from: { model: '2' }, to: { model: 'draft' } });
    const kept = { ...sources, models: modelChoices([{ number: 2 }, { number: 1 }], undefined) };
    expect(firstSides(kept)).toMatchObject({ from: { model: '1' }, to: { model: '2' } });
  });

  it('take plan and day of the model’s own approvals alone', () => {
    const approval = (model: string): Approval => ({
      name: `${model}/a`,
      model,
      field: 'f',
      launchPlan: { method: 'LAUNCH_METHOD_HAND' },
      day: {},
    });
    const found = flightChoices('m', [approval('m'), approval('other')], undefined);
    expect(found.map((f) => f.key)).toEqual(['m/a']);
  });

  it('give one document each, on the field of the plan', () => {
    const { to } = firstSides(sources);
    expect(documentOf(to, sources)).toEqual({ ...draft.doc, field: redshank.field });
    expect(fieldOf(to, sources)).toBe('clubs/l/fields/q');
  });

  it('start from the other field’s own spot when the field is changed', () => {
    const { to } = firstSides(sources);
    const moved = documentOf({ ...to, field: 'clubs/l/fields/a' }, sources);
    const spots = (moved.field?.launchSpots ?? []).map((s) => s.name);
    expect(moved.field?.displayName).toBe('Long Acre');
    expect(spots).toContain(moved.launchPlan?.launchSpot);
    expect(redshank.launchPlan?.landingPlace).toBe('cropped heath');
    expect(moved.launchPlan?.landingPlace).toBeUndefined();
  });
});

describe('earlier submissions', () => {
  it('are each assessment before the one in hand, the latest first', () => {
    const approval = {
      assessment: 'c',
      transitions: [
        { assessment: 'a', modelRevision: 1 },
        { assessment: 'a', modelRevision: 1 },
        { assessment: 'b', modelRevision: 2 },
        { assessment: 'c', modelRevision: 3 },
        {},
      ],
    } as unknown as Approval;
    expect(earlierSubmissions(approval).map((s) => s.revision)).toEqual([2, 1]);
    expect(earlierSubmissions({ ...approval, transitions: [] })).toEqual([]);
  });
});
