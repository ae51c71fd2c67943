import { numberText } from '../../../app/units';
import type { AssessmentInput, Report } from '../../../app/wire';
import { documentWords } from '../../../app/documentWords';

const w = documentWords.rolling;

/** What the rolling tests of a document come to, in sentences: each test, their mean, and whether it is used. */
export function rollingLines(doc: AssessmentInput, report: Report | null | undefined): string[] {
  const gear = doc.model?.gear;
  const tests = gear?.rollingTests ?? [];
  if (tests.length === 0) return [w.none];
  const told = (id: string): number | undefined => report?.quantities?.find((q) => q.id === id)?.value;
  const each = tests
    .map((_, i) => ({ n: i + 1, value: told(`gear.rolling_test.${String(i + 1)}`) }))
    .filter((t): t is { n: number; value: number } => t.value !== undefined)
    .map((t) => w.each(t.n, numberText(t.value)));
  const [mean, spread] = [told('gear.rolling_friction'), told('gear.rolling_spread')];
  const single = each.length > 0 ? [`${each.join('; ')}.`] : [];
  if (mean === undefined || spread === undefined) return [...single, w.waiting];
  const direct = gear?.rollingResistanceRatio?.value !== undefined;
  return [...single, w.mean(numberText(mean), numberText(spread)), direct ? w.aside : w.used];
}
