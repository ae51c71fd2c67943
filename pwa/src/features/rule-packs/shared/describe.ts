import { unitOf } from '../../../app/paths';
import { show, type UnitChoice } from '../../../app/units';
import type { Rule, RuleCondition, RuleFact } from '../../../app/wire';
import { ruleWords } from '../../../app/ruleWords';
import { choicesOf, parts, sayOf } from '../../models/shared/shape';

const w = ruleWords.rulePack;

/** SI unit of each fact that a rule may hold; the server keeps the same table. */
const factUnits: Record<RuleFact, string> = {
  RULE_FACT_UNSPECIFIED: '1',
  RULE_FACT_TAKEOFF_MASS: 'kg',
  RULE_FACT_EMPTY_MASS: 'kg',
  RULE_FACT_STATIC_THRUST: 'N',
  RULE_FACT_ENGINE_COUNT: '1',
  RULE_FACT_CIRCUIT_AIRSPEED: 'm/s',
  RULE_FACT_HEIGHT: 'm',
  RULE_FACT_FAIL_SAFE_DELAY: 's',
};

export const unitOfFact = (fact: RuleFact | undefined): string => factUnits[fact ?? 'RULE_FACT_UNSPECIFIED'];

/** Figures of the computation that a rule may set, with their words, by the alphabet of the words. */
export const limitChoices: [name: string, text: string][] = (parts['Limits'] ?? [])
  .filter((f) => f.kind === 'number')
  .map((f): [string, string] => [f.field, sayOf('Limits', f.field).label])
  .sort((a, b) => a[1].localeCompare(b[1]));

const factText = (fact: string): string =>
  choicesOf('RuleFact').find(([value]) => value === fact)?.[1] ?? fact;

/** What a figure limits, in words and with a capital: a figure of the computation, or a fact. */
export function limitedText(name: string): string {
  if (!name.startsWith('RULE_FACT')) return sayOf('Limits', name).label;
  const text = factText(name);
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** SI unit in which a rule's figure is kept. */
export function unitOfRule(rule: Rule): string {
  if (rule.kind === 'RULE_KIND_CLASS') return unitOfFact(rule.fact);
  return rule.limit ? unitOf(rule.limit) : '1';
}

/** True where the figure is the least that passes: as said for a fact, by its name for a figure of the computation. */
export function isLeast(rule: Rule): boolean {
  if (rule.kind === 'RULE_KIND_CLASS') return rule.sense === 'RULE_SENSE_LEAST';
  return !(rule.limit ?? '').startsWith('maximum');
}

/** "at most 120 m"; empty for a rule without figure. */
export function figureText(rule: Rule, units: UnitChoice): string {
  if (rule.kind === 'RULE_KIND_CONFIRMATION' || rule.kind === undefined) return '';
  if (rule.value === undefined) return w.noFigure;
  const text = show(rule.value, unitOfRule(rule), units);
  return isLeast(rule) ? w.atLeast(text) : w.atMost(text);
}

function conditionText(c: RuleCondition, units: UnitChoice): string[] {
  const said: string[] = [];
  const fact = factText(c.fact ?? '');
  const [low, high] = [c.atLeast, c.atMost].map((v) => show(v, unitOfFact(c.fact), units));
  if (c.fact && c.atLeast !== undefined && c.atMost !== undefined)
    said.push(w.factBetween(fact, low ?? '', high ?? ''));
  else if (c.fact && c.atLeast !== undefined) said.push(w.factAtLeast(fact, low ?? ''));
  else if (c.fact && c.atMost !== undefined) said.push(w.factAtMost(fact, high ?? ''));
  const kinds = choicesOf('EngineKind').filter(([value]) =>
    c.engineKinds?.includes(value as NonNullable<RuleCondition['engineKinds']>[number]),
  );
  if (kinds.length > 0) said.push(w.engine(kinds.map(([, text]) => text).join(w.or)));
  return said;
}

/** When a rule applies, in one sentence. */
export function whenText(rule: Rule, units: UnitChoice): string {
  const said = (rule.conditions ?? []).flatMap((c) => conditionText(c, units));
  return said.length === 0 ? w.always : w.when(said.join(w.and));
}

export type RuleGroup = { kind: 'limit' | 'class' | 'confirmation'; rules: Rule[] };

/** Rules by what they ask; kinds without a rule are left out. */
export function groupsOf(rules: Rule[]): RuleGroup[] {
  const of = { limit: 'RULE_KIND_LIMIT', class: 'RULE_KIND_CLASS', confirmation: 'RULE_KIND_CONFIRMATION' };
  return (['limit', 'class', 'confirmation'] as const)
    .map((kind) => ({ kind, rules: rules.filter((r) => r.kind === of[kind]) }))
    .filter((g) => g.rules.length > 0);
}
