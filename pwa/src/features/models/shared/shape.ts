import { documentWords } from '../../../app/documentWords';
import { words } from '../../../app/words';
import shape from '../../../gen/shape.json';

/** One field of a part of the document. */
export type Shape = {
  field: string;
  kind: 'quantity' | 'number' | 'count' | 'text' | 'tick' | 'choice' | 'part';
  /** Name of the part or of the choice. */
  of?: string;
  list?: boolean;
};

/** Parts of the document with their fields, as the contract has them. */
export const parts = shape.parts as unknown as Record<string, Shape[]>;
/** Values of every choice. */
export const choices = shape.choices as Record<string, string[]>;

const w = documentWords;

/** Words of choices that the page says elsewhere too. */
const saidElsewhere: Record<string, Record<string, string>> = {
  LaunchMethod: words.launch,
  SurfaceState: words.surface,
  Frost: words.frost.options,
  HandlingClass: words.handling.classes,
  FailSafeAction: words.failSafe.actions,
};

/** Values of a choice with their words. */
export function choicesOf(name: string): [value: string, text: string][] {
  const said = saidElsewhere[name] ?? (w.choices as Record<string, Record<string, string>>)[name] ?? {};
  return (choices[name] ?? []).map((value) => [value, said[value] ?? value]);
}

/** Label and hint of a field; without words of its own a field is called by its name. */
export function sayOf(part: string, field: string): { label: string; hint: string } {
  const [label = field, hint = ''] = w.parts[part]?.[field] ?? [];
  return { label, hint };
}

/** Fields of a part, in the order of their words. */
export function fieldsOf(part: string): Shape[] {
  const order = Object.keys(w.parts[part] ?? {});
  const place = (s: Shape): number => (order.includes(s.field) ? order.indexOf(s.field) : order.length);
  return [...(parts[part] ?? [])].sort((a, b) => place(a) - place(b));
}

/** The field at a place of the document: "model.gear.rollingTests". */
export function fieldAt(path: string): { part: string; shape: Shape } | undefined {
  let part = 'AssessmentInput';
  let found: { part: string; shape: Shape } | undefined;
  for (const name of path.split('.').filter((n) => !/^\d+$/.test(n))) {
    const next = parts[part]?.find((s) => s.field === name);
    if (!next) return undefined;
    found = { part, shape: next };
    part = next.of ?? '';
  }
  return found;
}

/** Words typed one after the other, separated by commas; undefined for none. */
export function listed(text: string): string[] | undefined {
  const all = text.split(',').map((t) => t.trim());
  return all.some((t) => t !== '') ? all.filter((t) => t !== '') : undefined;
}
