import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { bareName, setIn, unitOf } from '../../src/app/paths';
import { problemFrom } from '../../src/app/problem';
import { defaultUnits } from '../../src/app/units';
import type { AssessmentInput, ModelDescription, Report } from '../../src/app/wire';
import { faultOf } from '../../src/features/models/shared/faults';
import {
  lists,
  measured,
  moved,
  pitchThrows,
  rowsOf,
  scalesUnderWheels,
  withoutAt,
  withRow,
  type ListName,
} from '../../src/features/models/shared/rows';
import {
  fineText,
  letScalesDecide,
  resultOf,
  typedBeforeScales,
} from '../../src/features/models/shared/weighing';
import { balanceLine, curvesOf, liftLine } from '../../src/features/model-sheet/sheet';

const read = (path: string): unknown => JSON.parse(readFileSync(new URL(path, import.meta.url), 'utf8'));
const report = read('report.fixture.json') as Report;
const sandmartin = read('../../../testdata/demo/sandmartin.json') as ModelDescription;

describe('rows', () => {
  const doc: AssessmentInput = { model: sandmartin };

  it('reads each list of the document, and none where there is none', () => {
    expect(rowsOf(doc, 'tanks').map((r) => r.name)).toEqual(['main']);
    expect(rowsOf(doc, 'scales')).toEqual([]);
    expect(rowsOf({}, 'items')).toEqual([]);
  });

  it('adds a row under a name that no other has', () => {
    const rows = withRow(withRow([{ name: 'item 3' }], 'items'), 'items');
    expect(rows.map((r) => r.name)).toEqual(['item 3', 'item 2', 'item 4']);
  });

  it.each([
    [0, 1, ['b', 'a', 'c']],
    [2, -1, ['a', 'c', 'b']],
    [0, -1, ['a', 'b', 'c']],
    [2, 5, ['a', 'b', 'c']],
    [7, 1, ['a', 'b', 'c']],
  ])('moves row %i by %i', (index, by, expected) => {
    expect(moved(['a', 'b', 'c'], index, by)).toEqual(expected);
  });

  it('removes one and leaves the others', () => {
    expect(withoutAt(['a', 'b', 'c'], 1)).toEqual(['a', 'c']);
  });

  it('changes a deep value of a row and nothing else', () => {
    const path = `${lists.scales.path}.1.repeats.0.readingKg`;
    const two = setIn(doc, lists.scales.path, [{ name: 'nose' }, { name: 'left', repeats: [{}] }]);
    expect(rowsOf(setIn(two, path, 4.2), 'scales')).toEqual([
      { name: 'nose' },
      { name: 'left', repeats: [{ readingKg: 4.2 }] },
    ]);
  });

  it('has a unit for every measured box', () => {
    for (const list of Object.keys(lists) as ListName[])
      for (const cell of lists[list].cells)
        if (cell.kind === 'measured' || cell.kind === 'quantity') expect(unitOf(cell.field)).not.toBe('1');
  });
});

it('starts with one scale under each wheel', () => {
  expect(scalesUnderWheels(sandmartin)).toEqual([
    { name: 'nose', xMeters: 0.35, yMeters: 0 },
    { name: 'left main', xMeters: 1.03, yMeters: -0.32 },
    { name: 'right main', xMeters: 1.03, yMeters: 0.32 },
  ]);
  expect(scalesUnderWheels(undefined)).toEqual([]);
});

it('knows a reading as measured and keeps its spread', () => {
  expect(measured(3.2, { value: 3, spread: 0.01 })).toEqual({
    value: 3.2,
    spread: 0.01,
    basis: 'BASIS_MEASURED',
  });
  expect(measured(undefined, { value: 3 })).toBeUndefined();
});

it('asks for the throws of pitch controls only', () => {
  expect(pitchThrows(sandmartin)).toEqual([
    { path: 'model.surfaces.1.controls.0.throwUpDegrees', name: 'elevator', up: true },
    { path: 'model.surfaces.1.controls.0.throwDownDegrees', name: 'elevator', up: false },
  ]);
});

it.each([
  ['wingTwistStiffnessNewtonMetersPerRadian', 'wingTwistStiffness', 'N m/rad'],
  ['wallThicknessMeters', 'wallThickness', 'm'],
  ['strutFrontalAreaSquareMeters', 'strutFrontalArea', 'm2'],
  ['airspeedMetersPerSecond', 'airspeed', 'm/s'],
  ['maximumRpm', 'maximumRpm', '1'],
])('%s is %s in %s', (name, bare, unit) => {
  expect(bareName(name)).toBe(bare);
  expect(unitOf(name)).toBe(unit);
});

describe('what the server refuses', () => {
  const problem = problemFrom(
    400,
    {
      message: 'two fields are wrong',
      fieldViolations: [
        { field: 'model.mass.scaleReadings[1].readingKg.value', description: 'must be above zero' },
        { field: 'model.mass.empty_mass_kg', description: 'must be above zero' },
      ],
    },
    'r1',
    '',
  );

  it('is known at the box of the field, however the path is written', () => {
    expect(faultOf(problem.fields, 'model.mass.scaleReadings.1.readingKg')).toBe('must be above zero');
    expect(faultOf(problem.fields, 'model.mass.emptyMassKg')).toBe('must be above zero');
    expect(faultOf(problem.fields, 'model.mass.scaleReadings.1.readingK')).toBeUndefined();
    expect(faultOf(problem.fields, 'model.mass.scaleReadings.0.readingKg')).toBeUndefined();
  });
});

describe('what a report says', () => {
  it('about the weighing', () => {
    const found = resultOf(report);
    expect(found.main.map((q) => q.id)).toEqual(['mass.empty', 'balance.empty_x']);
    expect(found.rest.map((q) => q.id)).toEqual([
      'mass.weighed',
      'mass.listed',
      'mass.difference',
      'mass.takeoff',
      'balance.full_x',
    ]);
    expect(found.findings.map((f) => f.id)).toEqual(['mass.reconciled']);
    expect(resultOf(null)).toEqual({ main: [], rest: [], findings: [] });
  });

  it.each([
    [undefined, false],
    [{}, false],
    [{ emptyMassKg: { value: 7 } }, false],
    [{ scaleReadings: [{}] }, false],
    [{ emptyMassKg: { value: 7 }, scaleReadings: [{}] }, true],
    [{ emptyMassKg: {}, emptyBalanceXMeters: { value: 0.9 }, scaleReadings: [{}] }, true],
  ])('%j: typed before scales %s', (mass, expected) => {
    expect(typedBeforeScales(mass)).toBe(expected);
    if (mass) expect(typedBeforeScales(letScalesDecide(mass))).toBe(false);
  });

  it('lets the scales decide without losing anything else', () => {
    const mass = { emptyMassKg: { value: 7 }, tanks: [{ name: 'main' }], scaleReadings: [{ name: 'nose' }] };
    expect(letScalesDecide(mass)).toEqual({ tanks: mass.tanks, scaleReadings: mass.scaleReadings });
  });

  it.each([
    [9.7124, 'kg', '9.712\u00a0kg'],
    [-0.00004, 'm', '0.000\u00a0m'],
    [0.022, '1', '0.022'],
    [undefined, 'kg', '\u2013'],
  ])('%d %s as finely as it was read', (value, unit, text) => {
    expect(fineText({ unit, ...(value === undefined ? {} : { value }) }, defaultUnits)).toBe(text);
  });

  it('in one line a part of the sheet', () => {
    expect(liftLine(report)).toBe('Greatest lift coefficient 1.14, drag coefficient without lift 0.0305.');
    expect(balanceLine(report)).toBe(
      'Static margin 11.5\u00a0% of the mean chord with full tanks, 11.9\u00a0% empty.',
    );
    expect(liftLine({})).toBe('Nothing computed yet.');
  });

  it('in curves, each in one part', () => {
    expect(curvesOf(report, 'lift').map((c) => c.id)).toEqual([
      'lift.curve',
      'drag.polar',
      'lift.span_loading',
    ]);
    expect(curvesOf(report, 'balance').map((c) => c.id)).toEqual(['trim.elevator', 'balance.burn']);
    expect(curvesOf({ curves: [{ id: 'new.one' }] }, 'lift').map((c) => c.id)).toEqual(['new.one']);
  });
});
