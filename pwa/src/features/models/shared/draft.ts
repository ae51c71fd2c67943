import type { AssessmentInput, Field, LaunchMethod, ModelDescription } from '../../../app/wire';
import type { EntryPath } from '../../../app/words';

/** What a member types before it is sent. Replaced as a whole at every change, never changed in place. */
export type Draft = {
  /** The document without its field, which is taken from the club's list. */
  doc: AssessmentInput;
  /** Resource name of the chosen field. */
  field: string;
  note: string;
  /** Model already registered on the server, with the etag the draft rests on. */
  model?: { name: string; etag: string };
};

export function blank(): Draft {
  return { doc: { model: {}, launchPlan: {}, day: {} }, field: '', note: '' };
}

const documentParts = ['model', 'field', 'launchPlan', 'day', 'limits'];
const modelParts = ['displayName', 'surfaces', 'bodies', 'mass', 'engines', 'gear', 'structure', 'radio'];

/** Reads a file: a whole document, or the description of a model alone. Undefined when it is neither. */
export function readFile(text: string): AssessmentInput | undefined {
  let json: unknown;
  try {
    json = JSON.parse(text);
  } catch {
    return undefined;
  }
  if (json === null || typeof json !== 'object' || Array.isArray(json)) return undefined;
  const names = Object.keys(json);
  if (names.includes('model') && names.every((n) => documentParts.includes(n)))
    return json as AssessmentInput;
  if (names.some((n) => modelParts.includes(n))) return { model: json as ModelDescription };
  return undefined;
}

/** A draft from a file's document: the field is the club's own of the same name. */
export function fromDocument(input: AssessmentInput, fields: Field[]): Draft {
  const { field, ...rest } = input;
  const known = fields.find((f) => f.displayName === field?.displayName);
  return { ...blank(), doc: { ...blank().doc, ...rest }, field: known?.name ?? '' };
}

/** The whole document that is computed and shown. */
export function whole(draft: Draft, fields: Field[]): AssessmentInput {
  const field = fields.find((f) => f.name === draft.field)?.description;
  return field ? { ...draft.doc, field } : draft.doc;
}

const always: EntryPath[] = ['launchPlan.circuit.heightMeters'];
const byMethod: Partial<Record<LaunchMethod, EntryPath[]>> = {
  LAUNCH_METHOD_RAMP: [
    'launchPlan.ramp.lengthMeters',
    'launchPlan.ramp.angleDegrees',
    'launchPlan.ramp.endHeightMeters',
  ],
  LAUNCH_METHOD_BUNGEE: ['launchPlan.bungee.stiffnessNewtonsPerMeter', 'launchPlan.bungee.stretchMeters'],
  LAUNCH_METHOD_HAND: ['launchPlan.handSpeedMetersPerSecond'],
};

/** Boxes of the plan for a way of launching. */
export function planEntries(method: LaunchMethod | undefined): EntryPath[] {
  return [...(byMethod[method ?? 'LAUNCH_METHOD_UNSPECIFIED'] ?? []), ...always];
}

/** What keeps a draft from being sent, in the order a person should see to it. */
export function lacking(draft: Draft): 'name' | 'field' | undefined {
  if (!draft.doc.model?.displayName?.trim()) return 'name';
  return draft.field === '' ? 'field' : undefined;
}
