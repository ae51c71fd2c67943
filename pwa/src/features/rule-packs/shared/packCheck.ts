import type { FieldFault } from '../../../app/problem';
import type { Rule, RuleCondition, RulePackContent } from '../../../app/wire';
import { ruleWords } from '../../../app/ruleWords';

const w = ruleWords.ruleForm.check;
const slug = /^[a-z0-9]([a-z0-9-]*[a-z0-9])?$/;

type Add = (field: string, description: string) => void;

const isDay = (text: string): boolean =>
  /^\d{4}-\d{2}-\d{2}$/.test(text) && !Number.isNaN(new Date(`${text}T00:00:00Z`).getTime());

function needed(add: Add, path: string, text: string | undefined): void {
  if (!text?.trim()) add(path, w.needed);
}
function named(add: Add, path: string, text: string | undefined): void {
  if (!text?.trim()) add(path, w.needed);
  else if (!slug.test(text)) add(path, w.slug);
}
function dated(add: Add, path: string, text: string | undefined): void {
  if (text && !isDay(text)) add(path, w.date);
}

function checkCondition(add: Add, at: string, c: RuleCondition): void {
  const fact = c.fact !== undefined && c.fact !== 'RULE_FACT_UNSPECIFIED';
  const bounded = c.atLeast !== undefined || c.atMost !== undefined;
  if (!fact && bounded) add(`${at}.fact`, w.choose);
  else if (!fact && (c.engineKinds ?? []).length === 0) add(`${at}.fact`, w.engineOrFact);
  if (fact && !bounded) add(`${at}.atLeast`, w.bounds);
  if (c.atLeast !== undefined && c.atMost !== undefined && c.atMost < c.atLeast)
    add(`${at}.atMost`, w.boundsOrder);
}

function checkKind(add: Add, at: string, rule: Rule): void {
  switch (rule.kind) {
    case 'RULE_KIND_LIMIT':
      if (!rule.limit) add(`${at}.limit`, w.choose);
      break;
    case 'RULE_KIND_CLASS':
      if (!rule.fact || rule.fact === 'RULE_FACT_UNSPECIFIED') add(`${at}.fact`, w.choose);
      if (!rule.sense || rule.sense === 'RULE_SENSE_UNSPECIFIED') add(`${at}.sense`, w.choose);
      break;
    case 'RULE_KIND_CONFIRMATION':
      return;
    default:
      add(`${at}.kind`, w.choose);
      return;
  }
  if (rule.value === undefined) add(`${at}.value`, w.figure);
}

function checkRule(add: Add, at: string, rule: Rule): void {
  named(add, `${at}.id`, rule.id);
  needed(add, `${at}.requirement`, rule.requirement);
  checkKind(add, at, rule);
  for (const name of ['date', 'inForceDate', 'expiresDate'] as const) dated(add, `${at}.${name}`, rule[name]);
  for (const [i, c] of (rule.conditions ?? []).entries())
    checkCondition(add, `${at}.conditions.${String(i)}`, c);
}

/** What a pack still lacks before the server takes it, by the box it belongs to; ranges of figures the server holds. */
export function checkPack(content: RulePackContent): FieldFault[] {
  const found: FieldFault[] = [];
  const add: Add = (field, description) => found.push({ field, description });
  named(add, 'id', content.id);
  for (const name of ['title', 'authority', 'version', 'inForceDate', 'source'] as const)
    needed(add, name, content[name]);
  dated(add, 'inForceDate', content.inForceDate);
  dated(add, 'expiresDate', content.expiresDate);
  if (content.expiresDate && content.expiresDate < (content.inForceDate ?? '')) add('expiresDate', w.order);
  const rules = content.rules ?? [];
  if (rules.length === 0) add('rules', w.rules);
  for (const [i, rule] of rules.entries()) {
    checkRule(add, `rules.${String(i)}`, rule);
    if (rule.id && rules.findIndex((r) => r.id === rule.id) < i) add(`rules.${String(i)}.id`, w.twice);
  }
  return found;
}

/** Faults that the server told, by the path within the pack. */
export function packFaults(fields: FieldFault[]): FieldFault[] {
  return fields.map((f) => ({ ...f, field: f.field.replace(/^(rulePack|rule_pack)\.(content\.?)?/, '') }));
}
