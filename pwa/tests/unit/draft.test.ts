import 'fake-indexeddb/auto';
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Field } from '../../src/app/wire';
import { words } from '../../src/app/words';
import {
  blank,
  fromDocument,
  lacking,
  planEntries,
  readFile,
  whole,
} from '../../src/features/models/shared/draft';
import { dropDraft, keepDraft, loadDraft } from '../../src/features/models/shared/draftStore';
import { getIn, setIn, unitOf } from '../../src/app/paths';
import { startTrail, step, undo } from '../../src/features/models/shared/trail';

const text = (name: string): string =>
  readFileSync(new URL(`../../../testdata/demo/${name}.json`, import.meta.url), 'utf8');
const quarryTop: Field = {
  name: 'clubs/larkmoor/fields/q',
  displayName: 'Quarry Top',
  description: { displayName: 'Quarry Top' },
};

describe('paths', () => {
  it('sets deep values without touching the original and makes missing parents', () => {
    const before = { model: { engines: [{ name: 'a' }] } };
    const after = setIn(before, 'model.engines.0.staticThrustNewtons', { value: 80 });
    expect(after.model.engines[0]).toEqual({ name: 'a', staticThrustNewtons: { value: 80 } });
    expect(before.model.engines[0]).toEqual({ name: 'a' });
    expect(setIn({}, 'mass.tanks.0.capacityLiters', 1)).toEqual({ mass: { tanks: [{ capacityLiters: 1 }] } });
  });

  it('removes an entry that becomes absent', () => {
    expect(setIn({ a: { b: 1, c: 2 } }, 'a.b', undefined)).toEqual({ a: { c: 2 } });
  });

  it('reads what is there and nothing else', () => {
    expect(getIn({ a: [{ b: 3 }] }, 'a.0.b')).toBe(3);
    expect(getIn({ a: null }, 'a.0.b')).toBeUndefined();
  });

  it('finds a unit for every number box of the form', () => {
    for (const path of Object.keys(words.entries))
      expect(unitOf(path) === '1', path).toBe(path.endsWith('Ratio'));
    expect(unitOf('launchPlan.handSpeedMetersPerSecond')).toBe('m/s');
  });
});

describe('readFile', () => {
  it('takes a whole document and a model alone', () => {
    expect(readFile(text('redshank_quarry_top')).input?.field?.displayName).toBe('Quarry Top');
    expect(readFile(text('redshank')).input?.model?.displayName).toBe('Redshank');
  });

  it.each([
    ['', 'not JSON'],
    ['[]', 'neither'],
    ['{"day": {}}', 'neither'],
    ['{"model": {}, "surprise": 1}', '“surprise”'],
    ['{"modle": {}}', '“modle”'],
    ['null', 'neither'],
  ])('refuses %s and says why', (bad, why) => {
    const content = readFile(bad);
    expect(content.input).toBeUndefined();
    expect(content.fault).toContain(why);
  });

  it('finds the club’s own field by its name and leaves the copy out', () => {
    const draft = fromDocument(readFile(text('redshank_quarry_top')).input ?? {}, [quarryTop]);
    expect(draft.field).toBe(quarryTop.name);
    expect(draft.doc.field).toBeUndefined();
    expect(whole(draft, [quarryTop]).field).toBe(quarryTop.description);
  });
});

it('says what a draft lacks, first things first', () => {
  expect(lacking(blank())).toBe('name');
  const named = setIn(blank(), 'doc.model.displayName', 'Dabchick');
  expect(lacking(named)).toBe('field');
  expect(lacking({ ...named, field: 'f' })).toBeUndefined();
});

it('shows the boxes of the chosen launch', () => {
  expect(planEntries('LAUNCH_METHOD_RAMP')).toContain('launchPlan.ramp.lengthMeters');
  expect(planEntries('LAUNCH_METHOD_WHEELS')).toEqual(['launchPlan.circuit.heightMeters']);
});

describe('trail', () => {
  it('takes back values, not letters', () => {
    let trail = startTrail('');
    for (const typed of ['7', '7.', '7.3']) trail = step(trail, typed, 'mass');
    trail = step(trail, 'thrust', 'thrust');
    expect(undo(trail).now).toBe('7.3');
    expect(undo(undo(trail)).now).toBe('');
    expect(undo(undo(undo(trail))).now).toBe('');
  });
});

it('a draft survives on the device until it is dropped', async () => {
  const draft = { ...blank(), note: 'measured thrust on Sunday' };
  await keepDraft('ada|new', draft);
  expect((await loadDraft('ada|new'))?.draft).toEqual(draft);
  await dropDraft('ada|new');
  expect(await loadDraft('ada|new')).toBeUndefined();
});
