import { getContext, setContext } from 'svelte';
import { dotted } from '../../../app/paths';
import type { FieldFault } from '../../../app/problem';

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
