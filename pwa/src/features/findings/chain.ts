import { show, type UnitChoice } from '../../app/units';
import type { AssessmentInput, Basis, Quantity, Report, ReportQuantity } from '../../app/wire';
import { words } from '../../app/words';
import { dotted, getIn, unitOf } from '../../app/paths';
import { pathText } from './findings';

/** One step behind a number: a computed quantity, or an input where the chain ends. */
export type Step =
  | {
      kind: 'quantity';
      id: string;
      title: string;
      value: string;
      formula: string;
      source: string;
      from: string[];
    }
  | { kind: 'input'; id: string; title: string; value: string; basis: string; spread: string }
  | { kind: 'word'; id: string; title: string };

const inputs = /^(model|field|launchPlan|launch_plan|day|limits)\b/;

/** A title for a quantity that brought none: its id as words. */
function spoken(id: string): string {
  return id.replace(/[._]/g, ' ');
}

/** The value of a quantity as text: its number with unit, or its words. */
export function valueText(q: ReportQuantity, units: UnitChoice): string {
  return q.value === undefined ? (q.text ?? '\u2013') : show(q.value, q.unit ?? '1', units);
}

/** A quantity as a step. */
export function quantityStep(q: ReportQuantity, units: UnitChoice): Step {
  const id = q.id ?? '';
  return {
    kind: 'quantity',
    id,
    title: q.title || spoken(id),
    value: valueText(q, units),
    formula: q.formula ?? '',
    source: q.source ?? '',
    from: [...new Set(q.from ?? [])].filter((ref) => ref !== id),
  };
}

/** "SURFACE_STATE_WET" at "day.surfaceState" as "wet". */
function choiceText(choice: string, path: string): string {
  const last = path.split('.').pop() ?? '';
  const stem = last.replace(/([a-z])([A-Z])/g, '$1_$2').toUpperCase();
  const at = choice.indexOf(`${stem}_`);
  const rest = at < 0 ? choice : choice.slice(at + stem.length + 1);
  return /^[A-Z0-9_]+$/.test(rest) ? rest.replace(/_/g, ' ').toLowerCase() : rest;
}

/** A value of the document that is no quantity, as words. */
export function plain(value: unknown, path: string, units: UnitChoice): string {
  if (typeof value === 'number') return show(value, unitOf(path), units);
  if (typeof value === 'boolean') return value ? words.chain.yes : words.chain.no;
  if (typeof value === 'string') return choiceText(value, path);
  if (Array.isArray(value)) return words.chain.entries(value.length);
  return '';
}

function inputStep(id: string, document: AssessmentInput | undefined, units: UnitChoice): Step {
  const path = dotted(id);
  const found = getIn(document, path);
  const title = pathText(id, document);
  const lone = { kind: 'input' as const, id, title, basis: '', spread: '' };
  if (found === null || typeof found !== 'object' || Array.isArray(found))
    return { ...lone, value: plain(found, path, units) };
  const q = found as Quantity;
  const si = unitOf(path);
  return {
    ...lone,
    value: q.value === undefined ? '' : show(q.value, si, units),
    basis: 'value' in q || 'basis' in q ? basisText(q.basis) : '',
    spread: q.spread === undefined ? '' : show(q.spread, si, units),
  };
}

/** How a number is known, in words. */
export const basisText = (basis: Basis | undefined): string => words.basis[basis ?? 'BASIS_UNSPECIFIED'];

/** What a reference of a chain stands for: a quantity of the report, else an input of the document, else its own words. */
export function stepOf(
  ref: string,
  report: Report,
  document: AssessmentInput | undefined,
  units: UnitChoice,
): Step {
  const quantity = report.quantities?.find((q) => q.id === ref);
  if (quantity) return quantityStep(quantity, units);
  const finding = report.findings?.find((f) => f.id === ref);
  if (finding) {
    const { id, value, unit, title, from, source, method } = finding;
    return quantityStep(
      {
        ...(id === undefined ? {} : { id }),
        ...(value === undefined ? {} : { value }),
        ...(unit === undefined ? {} : { unit }),
        title: title ?? '',
        formula: method ?? '',
        source: source ?? '',
        from: from ?? [],
      },
      units,
    );
  }
  if (inputs.test(ref)) return inputStep(ref, document, units);
  return { kind: 'word', id: ref, title: ref.replace(/^method: /, '') };
}

/** Quantities whose title, id, words, formula or source hold every word of a search. */
export function searchQuantities(report: Report, search: string): ReportQuantity[] {
  const wanted = search.toLowerCase().split(/\s+/).filter(Boolean);
  return (report.quantities ?? []).filter((q) => {
    const text = [q.title, q.id, q.text, q.formula, q.source].join(' ').toLowerCase();
    return wanted.every((word) => text.includes(word));
  });
}
