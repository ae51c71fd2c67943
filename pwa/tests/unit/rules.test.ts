import { beforeEach, describe, expect, it, vi } from 'vitest';
import { Problem } from '../../src/app/problem';
import { defaultUnits } from '../../src/app/units';
import type { AssessmentInput, Limits, Report, Rule, RulePack, RulePackContent } from '../../src/app/wire';
import { split } from '../../src/features/findings/findings';
import { ClubRules } from '../../src/features/rule-packs/shared/clubRules';
import { askedOf, withWord } from '../../src/features/rule-packs/shared/confirmations';
import {
  figureText,
  groupsOf,
  isLeast,
  limitChoices,
  limitedText,
  unitOfRule,
  whenText,
} from '../../src/features/rule-packs/shared/describe';
import { checkPack, packFaults } from '../../src/features/rule-packs/shared/packCheck';
import { changed, newRule, nextOf, rebased, verified } from '../../src/features/rule-packs/shared/packDraft';
import {
  daysOf,
  gaveWord,
  grouped,
  nextVersion,
  ranOut,
  standingOf,
  verifiedCounts,
} from '../../src/features/rule-packs/shared/packs';
import { ruleOf, ruleParts, standOf, strictestText } from '../../src/features/rule-packs/shared/strictest';

const height: Rule = {
  id: 'height',
  kind: 'RULE_KIND_LIMIT',
  requirement: 'The flight stays within 120 m of the surface.',
  limit: 'maximumHeightMeters',
  value: 120,
  unit: 'm',
  verified: true,
};
const helper: Rule = { id: 'helper', kind: 'RULE_KIND_CONFIRMATION', requirement: 'A helper looks out.' };
const pack: RulePackContent = {
  id: 'larkmoor-club',
  title: 'Larkmoor Model Flying Club',
  authority: 'Larkmoor Model Flying Club',
  version: 'draft 1',
  inForceDate: '2026-03-01',
  source: 'Figures of the club',
  rules: [height, helper],
};
const kept = (state: RulePack['state'], content: Partial<RulePackContent> = {}): RulePack =>
  ({ name: 'clubs/larkmoor/rulePacks/a', etag: '1', state, content: { ...pack, ...content } }) as RulePack;
const at = (content: RulePackContent): string[] => checkPack(content).map((f) => f.field);

describe('standing of a pack', () => {
  it('follows its state and its days', () => {
    const day = '2026-05-16';
    expect(standingOf(kept('RULE_PACK_STATE_DRAFT'), day)).toBe('draft');
    expect(standingOf(kept('RULE_PACK_STATE_PROPOSED'), day)).toBe('waiting');
    expect(standingOf(kept('RULE_PACK_STATE_RETIRED'), day)).toBe('retired');
    const published = (content: Partial<RulePackContent>): string =>
      standingOf(kept('RULE_PACK_STATE_PUBLISHED', content), day);
    expect(published({})).toBe('force');
    expect(published({ inForceDate: '2026-05-16', expiresDate: '2026-05-16' })).toBe('force');
    expect(published({ inForceDate: '2026-05-17' })).toBe('coming');
    expect(published({ expiresDate: '2026-05-15' })).toBe('expired');
    const followed = (replacedDate: string): string =>
      standingOf({ ...kept('RULE_PACK_STATE_PUBLISHED'), replacedDate }, day);
    expect(followed('2026-05-17')).toBe('force');
    expect(followed('2026-05-16')).toBe('replaced');
  });

  it('puts what waits for somebody first, and leaves empty groups out', () => {
    const packs = [kept('RULE_PACK_STATE_PUBLISHED'), kept('RULE_PACK_STATE_PROPOSED')];
    expect(grouped(packs, '2026-05-16').map((g) => g.standing)).toEqual(['waiting', 'force']);
  });

  it('counts what nobody has read, and what is not said to be read, as unverified', () => {
    expect(verifiedCounts(pack)).toEqual({ yes: 1, no: 1 });
  });

  it('ends with the earlier last day, and begins with the later first day', () => {
    const rule = { ...height, inForceDate: '2026-02-01', expiresDate: '2026-12-31' };
    expect(daysOf(rule, { ...pack, expiresDate: '2026-06-30' })).toEqual({
      first: '2026-03-01',
      last: '2026-06-30',
    });
    expect(ranOut(rule, pack, '2026-12-31')).toBe(false);
    expect(ranOut(rule, pack, '2027-01-01')).toBe(true);
    expect(ranOut(height, pack, '2099-01-01')).toBe(false);
  });

  it('tells who gave the word', () => {
    expect(gaveWord(['Mei Castellan'], 'Mei Castellan')).toBe(true);
    expect(gaveWord(undefined, 'Mei Castellan')).toBe(false);
    expect(gaveWord([''], undefined)).toBe(false);
  });
});

describe('the next version', () => {
  it.each([
    ['draft 1', [], 'draft 2'],
    ['draft 1', ['draft 2', 'draft 3'], 'draft 4'],
    ['2023-12', [], '2023-12-2'],
    ['2023-12', ['2023-12-2'], '2023-12-3'],
    ['2004', [], '2004-2'],
  ])('of %s beside %j is %s', (version, taken, next) => {
    expect(nextVersion(version, taken)).toBe(next);
  });

  it('keeps the first day, drops a last day that is over, and copies a pack the club lacks as it is', () => {
    const next = nextOf(
      { ...pack, expiresDate: '2026-04-30' },
      [kept('RULE_PACK_STATE_PUBLISHED')],
      '2026-05-16',
    );
    expect(next).toMatchObject({ version: 'draft 2', inForceDate: '2026-03-01' });
    expect(next).not.toHaveProperty('expiresDate');
    expect(nextOf(pack, [], '2026-05-16')).toEqual(pack);
  });

  it('keeps what was typed when the server has a newer one', () => {
    const newer = { ...kept('RULE_PACK_STATE_DRAFT', { title: 'x' }), etag: '9' };
    expect(rebased({ content: pack, rests: { name: 'n', etag: '1' } }, newer)).toEqual({
      content: pack,
      rests: { name: 'clubs/larkmoor/rulePacks/a', etag: '9' },
    });
  });
});

describe('words of a rule', () => {
  const ft = { ...defaultUnits, length: 'ft' } as const;

  it('say the figure in the person’s unit and on its side', () => {
    expect(figureText(height, defaultUnits)).toBe('at most 120\u00a0m');
    expect(figureText(height, ft)).toBe('at most 394\u00a0ft');
    expect(figureText({ ...height, limit: 'minimumPeopleDistanceMeters', value: 30 }, defaultUnits)).toBe(
      'at least 30\u00a0m',
    );
    expect(figureText(helper, defaultUnits)).toBe('');
    const fact: Rule = {
      kind: 'RULE_KIND_CLASS',
      fact: 'RULE_FACT_STATIC_THRUST',
      sense: 'RULE_SENSE_GREATEST',
    };
    expect(figureText({ ...fact, value: 200 }, defaultUnits)).toBe('at most 200\u00a0N');
    expect(figureText(fact, defaultUnits)).toBe('no figure');
    expect(isLeast({ ...fact, sense: 'RULE_SENSE_LEAST' })).toBe(true);
  });

  it('say when it applies', () => {
    expect(whenText(height, defaultUnits)).toBe('Always applies.');
    const rule: Rule = {
      conditions: [
        { engineKinds: ['ENGINE_KIND_TURBINE', 'ENGINE_KIND_DUCTED_FAN'] },
        { fact: 'RULE_FACT_TAKEOFF_MASS', atLeast: 7.5 },
        { fact: 'RULE_FACT_ENGINE_COUNT', atLeast: 1, atMost: 2 },
      ],
    };
    expect(whenText(rule, defaultUnits)).toBe(
      'Applies when the engine is a turbine or ducted fan and take-off mass is 7.5\u00a0kg or more and number of engines is from 1 to 2.',
    );
  });

  it('have words and a unit for every figure that a rule may set', () => {
    expect(limitChoices.length).toBeGreaterThan(40);
    for (const [name, text] of limitChoices) expect(text, name).not.toMatch(/^$|[a-z][A-Z]/);
    expect(unitOfRule({ ...height, limit: 'maximumMassKg' })).toBe('kg');
    expect(limitedText('RULE_FACT_HEIGHT')).toBe('Height of the circuit');
  });

  it('group rules by what they ask', () => {
    expect(groupsOf([helper, height]).map((g) => [g.kind, g.rules.length])).toEqual([
      ['limit', 1],
      ['confirmation', 1],
    ]);
  });
});

describe('a changed rule', () => {
  const read = verified({ ...height, verified: false }, 'Mei Castellan', '2026-05-16');

  it('carries who read it and when', () => {
    expect(read).toMatchObject({ verified: true, verifiedBy: 'Mei Castellan', verifiedDate: '2026-05-16' });
  });

  it('must be read anew when its substance changes, not when its words do', () => {
    expect(changed(read, 'requirement', 'Stay low.')).toMatchObject({
      verified: true,
      verifiedBy: 'Mei Castellan',
    });
    const other = changed(read, 'value', 60);
    expect(other).toMatchObject({ value: 60, verified: false });
    expect(other).not.toHaveProperty('verifiedBy');
  });

  it('loses what its new kind has no use for, and takes the unit of its figure', () => {
    expect(changed(height, 'kind', 'RULE_KIND_CONFIRMATION')).toEqual({
      id: 'height',
      kind: 'RULE_KIND_CONFIRMATION',
      requirement: height.requirement,
      verified: false,
    });
    expect(changed(height, 'limit', 'maximumMassKg').unit).toBe('kg');
  });

  it('has a name of its own when it is new', () => {
    expect(newRule([{ id: 'rule-2' }]).id).toBe('rule-3');
  });
});

describe('check before keeping', () => {
  it('finds nothing in a whole pack', () => {
    expect(checkPack(pack)).toEqual([]);
  });

  it('names every box that lacks something', () => {
    expect(at({ rules: [] })).toEqual([
      'id',
      'title',
      'authority',
      'version',
      'inForceDate',
      'source',
      'rules',
    ]);
    const withRule = (rule: Rule): string[] => at({ ...pack, rules: [rule] });
    expect(withRule({ id: 'Height', kind: 'RULE_KIND_LIMIT', requirement: 'x' })).toEqual([
      'rules.0.id',
      'rules.0.limit',
      'rules.0.value',
    ]);
    expect(withRule({ id: 'a', kind: 'RULE_KIND_CLASS', requirement: 'x', value: 1 })).toEqual([
      'rules.0.fact',
      'rules.0.sense',
    ]);
    expect(withRule({ ...helper, conditions: [{}, { fact: 'RULE_FACT_HEIGHT' }] })).toEqual([
      'rules.0.conditions.0.fact',
      'rules.0.conditions.1.atLeast',
    ]);
    expect(
      withRule({ ...helper, conditions: [{ fact: 'RULE_FACT_HEIGHT', atLeast: 2, atMost: 1 }] }),
    ).toEqual(['rules.0.conditions.0.atMost']);
    expect(at({ ...pack, rules: [height, height] })).toEqual(['rules.1.id']);
    expect(at({ ...pack, expiresDate: '2026-02-28' })).toEqual(['expiresDate']);
    expect(at({ ...pack, rules: [{ ...helper, date: '2026-02-31x' }] })).toEqual(['rules.0.date']);
  });

  it('puts what the server says to the box that it means', () => {
    expect(packFaults([{ field: 'rulePack.content.rules[0].value', description: 'x' }])[0]?.field).toBe(
      'rules[0].value',
    );
  });
});

describe('strictest of all packs', () => {
  it('says the strictest, or what counts where no rule applies', () => {
    const figure = { limit: 'maximumHeightMeters', unit: 'm', sense: 'RULE_SENSE_GREATEST' } as const;
    expect(strictestText({ ...figure, value: 120, coreValue: 90 }, defaultUnits)).toBe('at most 120\u00a0m');
    expect(strictestText({ ...figure, coreValue: 90 }, defaultUnits)).toContain('own 90\u00a0m counts');
    expect(strictestText(figure, defaultUnits)).toContain('no figure of its own');
  });

  it('tells apart what counts, what is weaker and what does not apply', () => {
    const asked = [
      { deciding: true, applies: true, value: 5 },
      { applies: true, value: 5 },
      { applies: true, value: 9 },
      {},
    ];
    expect(new Set(asked.map((a) => standOf(a, 5))).size).toBe(4);
  });

  it('finds the rule in the pack in force, or in the draft that is tried', () => {
    const draft = { ...kept('RULE_PACK_STATE_DRAFT', { version: 'draft 2' }), name: 'd' };
    const packs = [draft, kept('RULE_PACK_STATE_PUBLISHED')];
    const finding = 'rule.larkmoor-club.height';
    expect(ruleOf(packs, finding)?.pack.content.version).toBe('draft 1');
    expect(ruleOf(packs, finding, 'd')?.pack.content.version).toBe('draft 2');
    expect(ruleOf(packs, 'owner')).toBeUndefined();
    expect(ruleParts(finding)).toEqual({ pack: 'larkmoor-club', rule: 'height' });
  });
});

describe('confirmations', () => {
  const document: AssessmentInput = {
    limits: {
      rules: [
        { ...helper, pack: 'club' },
        { ...helper, id: 'fire', pack: 'club' },
        { ...helper, id: 'said', pack: 'club' },
        { ...height, pack: 'club' },
      ],
    },
    confirmations: [{ rule: 'club.said', confirmed: true }],
  };
  const report: Report = {
    findings: [
      { id: 'rule.club.helper', verdict: 'VERDICT_UNKNOWN' },
      { id: 'rule.club.fire', verdict: 'VERDICT_HOLDS' },
      { id: 'rule.club.said', verdict: 'VERDICT_HOLDS' },
      { id: 'height.limit', verdict: 'VERDICT_FAILS' },
    ],
  };

  it('are asked for where a rule applies, and stay once given', () => {
    expect(askedOf(document, report).map((a) => a.key)).toEqual(['club.helper', 'club.said']);
    expect(askedOf({}, report)).toEqual([]);
  });

  it('take the place of a former word on the same rule', () => {
    const words = withWord(document.confirmations, { rule: 'club.said', confirmed: false });
    expect(words).toEqual([{ rule: 'club.said', confirmed: false }]);
    expect(withWord(words, { rule: 'club.helper', confirmed: true })).toHaveLength(2);
  });

  it('findings of rules stand apart from those of the computation', () => {
    const { own, rules } = split(report);
    expect(own.open.map((f) => f.id)).toEqual(['height.limit']);
    expect(rules.open.map((f) => f.id)).toEqual(['rule.club.helper']);
    expect(rules.holding).toHaveLength(2);
  });
});

describe('the club’s rules beside what is typed', () => {
  const limits: Limits = { maximumHeightMeters: 120 };
  const never = new AbortController().signal;
  const box = new Map<string, string>();
  beforeEach(() => {
    vi.useFakeTimers();
    box.clear();
    vi.stubGlobal('localStorage', {
      getItem: (k: string) => box.get(k) ?? null,
      setItem: (k: string, v: string) => box.set(k, v),
    });
  });

  it('are asked for once, and again only when what decides about them changes', async () => {
    const compose = vi.fn(() => Promise.resolve(limits));
    const rules = new ClubRules('larkmoor', compose);
    const newer = vi.fn();
    const first: AssessmentInput = { model: { mass: {}, displayName: 'a' } };
    expect((await rules.put(first, never, newer)).limits).toEqual(limits);
    await rules.put({ model: { mass: {}, displayName: 'b', surfaces: [{}] } }, never, newer);
    await vi.advanceTimersByTimeAsync(1000);
    expect(compose).toHaveBeenCalledTimes(1);
    compose.mockResolvedValue({ maximumHeightMeters: 60 });
    const heavy: AssessmentInput = { model: { mass: { emptyMassKg: { value: 9 } } } };
    expect((await rules.put(heavy, never, newer)).limits).toEqual(limits);
    await vi.advanceTimersByTimeAsync(1000);
    expect(newer).toHaveBeenCalledTimes(1);
    expect((await rules.put(heavy, never, newer)).limits).toEqual({ maximumHeightMeters: 60 });
    expect(compose).toHaveBeenCalledTimes(2);
  });

  it('are those kept last without a server, and say so', async () => {
    box.set('pitgate.rules.larkmoor', JSON.stringify(limits));
    const rules = new ClubRules('larkmoor', () => Promise.reject(new Problem(0, 'no answer', '')));
    expect((await rules.put({}, never, () => undefined)).limits).toEqual(limits);
    expect(rules.old).toBe(true);
  });

  it('leave a document that the server refuses to its own computation', async () => {
    const rules = new ClubRules('larkmoor', () => Promise.reject(new Problem(400, 'faults', '')));
    expect(await rules.put({ day: {} }, never, () => undefined)).toEqual({ day: {} });
    expect(rules.old).toBe(false);
  });
});
