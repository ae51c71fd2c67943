import { getContext, setContext } from 'svelte';
import { dotted, unitOf } from '../../../app/paths';
import type { FieldFault, Problem } from '../../../app/problem';
import { defaultUnits, shownUnit, type UnitChoice } from '../../../app/units';
import { words } from '../../../app/words';
import { fieldAt, sayOf } from './shape';

const key = Symbol('faults');

type Faults = () => FieldFault[];

/** What the server says against the value at a path, or undefined. */
export function faultOf(faults: FieldFault[], path: string): string | undefined {
  const at = (field: string): boolean => {
    const name = dotted(field);
    return name === path || name.startsWith(`${path}.`);
  };
  return faults.find((f) => at(f.field))?.description;
}

/** Lets the boxes of a form know what the server refuses. */
export function provideFaults(faults: Faults): void {
  setContext(key, faults);
}

/** Reads what the server says against a path; of use while a component is made. */
export function faultAt(): (path: string) => string | undefined {
  const faults = getContext<Faults | undefined>(key);
  return (path) => faultOf(faults?.() ?? [], path);
}

/** The unit in which the core tells a value: pascals, where the page shows hundreds of them. */
const coreUnit = (si: string): string => (si === 'Pa' ? si : shownUnit(si, defaultUnits));

/** What is said against a value, with the unit in which it is said where the person sees the box in another one. */
export function inUnit(description: string, si: string, units: UnitChoice): string {
  const own = coreUnit(si);
  return own === shownUnit(si, units) ? description : words.form.inUnit(own, description);
}

/** The box that a fault belongs to: what stands in front of a value or its spread. */
const boxOf = (field: string): string => dotted(field).replace(/\.(value|spread)$/, '');

/** The place of a fault in the words of its boxes, such as "Surfaces 1, Stations 2, Chord"; its path where there is no such box. */
export function placeOf(field: string): string {
  const steps = boxOf(field).split('.');
  const entry = (words.entries as Partial<Record<string, { label: string }>>)[steps.join('.')];
  if (entry) return entry.label;
  const said: string[] = [];
  for (const [i, step] of steps.entries()) {
    if (/^\d+$/.test(step)) {
      said.push(`${said.pop() ?? ''} ${String(Number(step) + 1)}`);
      continue;
    }
    const at = fieldAt(steps.slice(0, i + 1).join('.'));
    if (!at) return field;
    said.push(sayOf(at.part, at.shape.field).label);
  }
  return (said.length > 1 ? said.slice(1) : said).join(', ');
}

/** What a refusal says against single boxes, as its summary tells it: where, in which unit, what. Nothing that its message says already. */
export function faultTexts(problem: Problem): string[] {
  const texts = problem.fields
    .filter((f) => !problem.message.includes(f.description))
    .map((f) => {
      const unit = coreUnit(unitOf(boxOf(f.field)));
      return `${placeOf(f.field)}: ${unit === '' ? f.description : words.form.inUnit(unit, f.description)}`;
    });
  return [...new Set(texts)];
}
