/** Label of a field, and how to measure it or what an empty box means. */
export type FieldWords = readonly [label: string, hint?: string];
/** Words of the fields of parts of the document, in the order in which their boxes stand. */
export type PartWords = Record<string, Record<string, FieldWords>>;
