import type { Field, FieldDescription } from '../../../app/wire';
import type { Fix } from './walk';
import type { Kind } from './parts';

/** Corners walked so far, which are not a part of the field yet. */
export type Walked = { kind: Kind; corners: Fix[] };

/** What a keeper types before it is kept. Replaced as a whole at every change. */
export type FieldDraft = {
  description: FieldDescription;
  walked?: Walked;
  /** Field the draft changes, with the etag it rests on; absent for a new one. */
  rests?: { name: string; etag: string };
};

export function draftOf(field: Field): FieldDraft {
  const { name = '', etag = '', displayName = '' } = field;
  return { description: { ...field.description, displayName }, rests: { name, etag } };
}

/** The draft on a newer version of its field: what was typed stays. */
export function rebased(draft: FieldDraft, newer: Field): FieldDraft {
  return { ...draft, rests: { name: newer.name ?? '', etag: newer.etag ?? '' } };
}

/** The draft without walked corners. */
export function withoutWalk(draft: FieldDraft): FieldDraft {
  const { description, rests } = draft;
  return rests ? { description, rests } : { description };
}
