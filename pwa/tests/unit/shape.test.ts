import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { fromFieldBox, offsetOf, toFieldBox } from '../../src/app/dates';
import { unitOf } from '../../src/app/paths';
import type { AssessmentInput, Report } from '../../src/app/wire';
import { documentWords } from '../../src/app/documentWords';
import { words } from '../../src/app/words';
import { planLists } from '../../src/features/models/shared/draft';
import { rollingLines } from '../../src/features/models/shared/rolling';
import {
  choices,
  choicesOf,
  fieldAt,
  fieldsOf,
  listed,
  parts,
  sayOf,
} from '../../src/features/models/shared/shape';

type Of = {
  $ref?: string;
  allOf?: { $ref?: string }[];
  items?: Of;
  enum?: string[];
  properties?: Record<string, Of>;
};
const contract = JSON.parse(
  readFileSync(new URL('../../../proto/openapi.json', import.meta.url), 'utf8'),
) as {
  components: { schemas: Record<string, Of> };
};
const prefix = 'pitgate.v1.';
const refOf = (of: Of): string =>
  ((of.items ?? of).$ref ?? (of.items ?? of).allOf?.[0]?.$ref ?? '').split('/').at(-1) ?? '';

/** Every field of the document by the contract itself, as "Part.field"; the field has pages of its own. */
function walked(): string[] {
  const seen = new Set<string>();
  const found: string[] = [];
  const visit = (name: string): void => {
    if (seen.has(name)) return;
    seen.add(name);
    for (const [field, of] of Object.entries(contract.components.schemas[prefix + name]?.properties ?? {})) {
      if (name === 'AssessmentInput' && field === 'field') continue;
      found.push(`${name}.${field}`);
      const ref = refOf(of).replace(prefix, '');
      if (ref !== '' && ref !== 'Quantity' && !contract.components.schemas[prefix + ref]?.enum) visit(ref);
    }
  };
  visit('AssessmentInput');
  return found;
}

describe('boxes of the document', () => {
  const fields = walked();

  it('are there for every field of the contract, and for no other', () => {
    expect(fields.length).toBeGreaterThan(400);
    const boxes = Object.keys(parts).flatMap((part) => fieldsOf(part).map((f) => `${part}.${f.field}`));
    expect(boxes.sort()).toEqual([...fields].sort());
  });

  it('say what they are in words, never by a name of the contract', () => {
    const wordless = fields.filter((f) => {
      const [part = '', field = ''] = f.split('.');
      return documentWords.parts[part]?.[field] === undefined || sayOf(part, field).label === '';
    });
    expect(wordless).toEqual([]);
    const left = Object.entries(documentWords.parts).flatMap(([part, of]) =>
      Object.keys(of).map((field) => `${part}.${field}`),
    );
    expect(left.filter((f) => !fields.includes(f))).toEqual([]);
  });

  it('say every choice in words', () => {
    for (const name of Object.keys(choices))
      for (const [value, text] of choicesOf(name)) expect(text, value).not.toMatch(/_|^$/);
  });

  it('have a unit wherever the name of the field says one', () => {
    const bare =
      /(Ratio|Coefficient|Factor|Count|Rpm|Load|Order|Probability|PerDegree|count|rpm|value|Days|atMost|atLeast)$/;
    for (const [part, of] of Object.entries(parts))
      for (const f of of)
        if (['quantity', 'number', 'count'].includes(f.kind))
          expect(unitOf(f.field) === '1', `${part}.${f.field}`).toBe(bare.test(f.field));
  });

  it('tell how to measure what is measured', () => {
    for (const part of ['RollingTest', 'Pack', 'RadioLink', 'FuelSystem', 'SparPart', 'StaticRunPoint']) {
      const hinted = (parts[part] ?? []).filter((f) => sayOf(part, f.field).hint !== '');
      expect(hinted.length, part).toBeGreaterThanOrEqual((parts[part]?.length ?? 0) / 3);
    }
  });

  it('are found by the path of the document', () => {
    expect(fieldAt('model.gear.rollingTests')?.shape).toMatchObject({
      kind: 'part',
      of: 'RollingTest',
      list: true,
    });
    expect(fieldAt('model.engines.0.staticRun.2.rpm')?.part).toBe('StaticRunPoint');
    expect(fieldAt('model.nothing')).toBeUndefined();
  });

  it('take several words as a list', () => {
    expect(listed('carbon, fuel,')).toEqual(['carbon', 'fuel']);
    expect(listed(' , ')).toBeUndefined();
  });
});

it('a launch has the list that its force comes from', () => {
  expect(planLists('LAUNCH_METHOD_BUNGEE')).toEqual(['launchPlan.bungee.pullTest']);
  expect(planLists('LAUNCH_METHOD_CATAPULT')).toEqual(['launchPlan.catapult']);
  expect(planLists('LAUNCH_METHOD_WHEELS')).toEqual([]);
  for (const method of Object.keys(words.launch))
    for (const path of planLists(method as keyof typeof words.launch))
      expect(fieldAt(path)?.shape.list).toBe(true);
});

describe('rolling tests', () => {
  const doc: AssessmentInput = { model: { gear: { rollingTests: [{}, {}] } } };
  const report: Report = {
    quantities: [
      { id: 'gear.rolling_test.1', value: 0.1 },
      { id: 'gear.rolling_test.2', value: 0.12 },
      { id: 'gear.rolling_friction', value: 0.11 },
      { id: 'gear.rolling_spread', value: 0.01 },
    ],
  };

  it('are told one by one, with their mean and its spread', () => {
    const text = rollingLines(doc, report).join(' ');
    expect(text).toContain('test 1: 0.1; test 2: 0.12.');
    expect(text).toContain('0.11, one standard deviation 0.01');
    expect(text).toContain(documentWords.rolling.used);
  });

  it('say that a figure entered directly stands before them, and that they are not complete', () => {
    const direct = { model: { gear: { ...doc.model?.gear, rollingResistanceRatio: { value: 0.2 } } } };
    expect(rollingLines(direct, report)).toContain(documentWords.rolling.aside);
    expect(rollingLines(doc, { quantities: report.quantities?.slice(0, 1) ?? [] })).toContain(
      documentWords.rolling.waiting,
    );
    expect(rollingLines({}, report)).toEqual([documentWords.rolling.none]);
  });
});

describe('times of the document', () => {
  it('are shown and kept by the clock at the field, wherever this device is', () => {
    const time = '2026-05-18T10:30:00+09:00';
    expect(toFieldBox(time)).toBe('2026-05-18T10:30');
    expect(offsetOf(time)).toBe('+09:00');
    expect(fromFieldBox('2026-05-18T21:15', time)).toBe('2026-05-18T21:15:00+09:00');
    expect(fromFieldBox('2026-05-18T21:15', '2026-05-18T01:00:00Z')).toBe('2026-05-18T21:15:00Z');
    expect(fromFieldBox('2026-05-18T21:15', undefined)).toMatch(/^2026-05-18T21:15:00[+-]\d\d:\d\d$/);
    expect(fromFieldBox('', time)).toBeUndefined();
    expect(toFieldBox('soon')).toBe('');
  });
});
