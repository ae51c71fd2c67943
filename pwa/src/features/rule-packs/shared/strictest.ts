import { show, type UnitChoice } from '../../../app/units';
import type { AskedFigure, Model, Rule, RulePack, StrictestFigure } from '../../../app/wire';
import { ruleWords } from '../../../app/ruleWords';

const w = ruleWords.strictest;

/** How the figure of one rule stands to the strictest. */
export function standOf(asked: AskedFigure, strictest: number | undefined): string {
  if (asked.deciding) return w.deciding;
  if (asked.applies && asked.value === strictest) return w.same;
  return asked.applies ? w.weaker : w.notApplies;
}

/** "at most 120 m", or what counts where no rule applies. */
export function strictestText(figure: StrictestFigure, units: UnitChoice): string {
  const unit = figure.unit ?? '1';
  if (figure.value !== undefined) return bounded(figure, figure.value, units);
  return figure.coreValue === undefined ? w.nothingCounts : w.coreCounts(show(figure.coreValue, unit, units));
}

/** A value as the least or the greatest that passes. */
export function bounded(figure: StrictestFigure, value: number | undefined, units: UnitChoice): string {
  const text = show(value, figure.unit ?? '1', units);
  return figure.sense === 'RULE_SENSE_LEAST'
    ? ruleWords.rulePack.atLeast(text)
    : ruleWords.rulePack.atMost(text);
}

/** Pack and rule that a finding of a rule names: "rule.eu-open-a3.height". */
export function ruleParts(finding: string): { pack: string; rule: string } | undefined {
  const [, pack, rule] = /^rule\.([^.]+)\.([^.]+)$/.exec(finding) ?? [];
  return pack && rule ? { pack, rule } : undefined;
}

/** The rule that a finding names, with the pack in force, or the draft tried with it, that holds it. */
export function ruleOf(
  packs: RulePack[],
  finding: string,
  draft = '',
): { pack: RulePack; rule: Rule } | undefined {
  const parts = ruleParts(finding);
  const held = packs.filter((p) => p.content.id === parts?.pack);
  const pack =
    held.find((p) => draft !== '' && p.name === draft) ??
    held.find((p) => p.state === 'RULE_PACK_STATE_PUBLISHED');
  const rule = pack?.content.rules?.find((r) => r.id === parts?.rule);
  return pack && rule ? { pack, rule } : undefined;
}

/** The document that is asked for: a model alone on a day, at noon by the field's clock. */
export function documentOf(model: Model | undefined, day: string): Record<string, unknown> {
  return {
    ...(model?.description ? { model: model.description } : {}),
    ...(day === '' ? {} : { day: { time: `${day}T12:00:00Z` } }),
  };
}

/** Figures by their words. */
export function inOrder(figures: StrictestFigure[], text: (name: string) => string): StrictestFigure[] {
  return [...figures].sort((a, b) => text(a.limit ?? '').localeCompare(text(b.limit ?? '')));
}
