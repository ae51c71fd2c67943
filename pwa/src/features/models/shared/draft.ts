import type { AssessmentInput, Field, LaunchMethod, ModelDescription } from '../../../app/wire';
import { words, type EntryPath } from '../../../app/words';

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

const documentParts = ['model', 'field', 'launchPlan', 'day', 'limits', 'confirmations'];
const modelParts = ['displayName', 'surfaces', 'bodies', 'mass', 'engines', 'gear', 'structure', 'radio'];

/** What a file holds: a document, or why it is none. */
export type FileContent = { input: AssessmentInput; fault?: never } | { input?: never; fault: string };

/** Reads a file: a whole document, or the description of a model alone. */
export function readFile(text: string): FileContent {
  let json: unknown;
  try {
    json = JSON.parse(text);
  } catch (error) {
    return { fault: words.form.fileNotJson(error instanceof Error ? error.message : '') };
  }
  if (json === null || typeof json !== 'object' || Array.isArray(json))
    return { fault: words.form.fileNoDocument };
  const names = Object.keys(json);
  if (!names.includes('model') && names.some((n) => modelParts.includes(n)))
    return { input: { model: json as ModelDescription } };
  const strange = names.filter((n) => !documentParts.includes(n));
  if (strange.length > 0) return { fault: words.form.fileStrange(strange) };
  return names.includes('model') ? { input: json } : { fault: words.form.fileNoDocument };
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
/** What each way of launching needs or uses, beside its place. */
export const byMethod: Partial<Record<LaunchMethod, EntryPath[]>> = {
  LAUNCH_METHOD_RAMP: [
    'launchPlan.ramp.lengthMeters',
    'launchPlan.ramp.angleDegrees',
    'launchPlan.ramp.endHeightMeters',
    'launchPlan.ramp.dollyMassKg',
    'launchPlan.ramp.dollyDragAreaSquareMeters',
    'launchPlan.ramp.frictionRatio',
    'launchPlan.ramp.cradleDegrees',
    'launchPlan.ramp.tailXMeters',
    'launchPlan.ramp.tailHeightMeters',
  ],
  LAUNCH_METHOD_BUNGEE: [
    'launchPlan.bungee.stiffnessNewtonsPerMeter',
    'launchPlan.bungee.stretchMeters',
    'launchPlan.bungee.efficiencyRatio',
    'launchPlan.bungee.cordMassKg',
    'launchPlan.bungee.frictionRatio',
    'launchPlan.bungee.hookReleaseNewtons',
  ],
  LAUNCH_METHOD_HAND: ['launchPlan.handSpeedMetersPerSecond', 'launchPlan.handHeightMeters'],
};

/** Boxes of the plan for a way of launching. */
export function planEntries(method: LaunchMethod | undefined): EntryPath[] {
  return [...(byMethod[method ?? 'LAUNCH_METHOD_UNSPECIFIED'] ?? []), ...always];
}

/** Lists of the plan for a way of launching: the rails' heights, the pull test of a cord, the forces of a catapult. */
export function planLists(method: LaunchMethod | undefined): string[] {
  const lists: Partial<Record<LaunchMethod, string>> = {
    LAUNCH_METHOD_RAMP: 'launchPlan.ramp.railProfile',
    LAUNCH_METHOD_BUNGEE: 'launchPlan.bungee.pullTest',
    LAUNCH_METHOD_CATAPULT: 'launchPlan.catapult',
  };
  const list = lists[method ?? 'LAUNCH_METHOD_UNSPECIFIED'];
  return list === undefined ? [] : [list];
}

/** What keeps a draft from being sent, in the order a person should see to it. */
export function lacking(draft: Draft): 'name' | 'field' | undefined {
  if (!draft.doc.model?.displayName?.trim()) return 'name';
  return draft.field === '' ? 'field' : undefined;
}
