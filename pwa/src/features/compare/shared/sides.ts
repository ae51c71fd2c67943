import { whenText } from '../../../app/dates';
import type {
  Approval,
  AssessmentInput,
  DayConditions,
  Field,
  LaunchPlan,
  Limits,
  ModelDescription,
  ModelRevision,
} from '../../../app/wire';
import { compareWords } from '../../../app/compareWords';
import { words } from '../../../app/words';
import { wayOf } from '../../models/shared/compare';
import type { Draft } from '../../models/shared/draft';

const w = compareWords;

/** A description that can stand on either side. */
export type ModelChoice = { key: string; text: string; number?: number; description?: ModelDescription };

/** A launch plan and a day that can stand on either side, with the field and the limits they were made for. */
export type Flight = {
  key: string;
  text: string;
  plan: LaunchPlan;
  day: DayConditions;
  field: string;
  limits?: Limits;
};

/** What one side is made of, by the keys of what it chose; no field: that of the launch plan. */
export type Side = { model: string; plan: string; day: string; field: string };

/** Everything there is to choose from. */
export type Sources = { models: ModelChoice[]; flights: Flight[]; fields: Field[] };

/** The draft of this device first, then the revisions, newest first. */
export function modelChoices(revisions: ModelRevision[], draft: Draft | undefined): ModelChoice[] {
  const kept = revisions.map((r) => ({
    key: String(r.number ?? 0),
    text: w.revision(r.number ?? 0, whenText(r.createTime)),
    number: r.number ?? 0,
    ...(r.description ? { description: r.description } : {}),
  }));
  const typed = draft?.doc.model;
  return typed ? [{ key: 'draft', text: w.draft, description: typed }, ...kept] : kept;
}

/** The plan of the draft where it has one, then those of the model's approvals. */
export function flightChoices(model: string, approvals: Approval[], draft: Draft | undefined): Flight[] {
  const doc = draft?.doc;
  const typed: Flight[] = doc?.launchPlan?.method
    ? [
        {
          key: 'draft',
          text: w.draft,
          plan: doc.launchPlan,
          day: doc.day ?? {},
          field: draft?.field ?? '',
          ...(doc.limits ? { limits: doc.limits } : {}),
        },
      ]
    : [];
  const kept = approvals
    .filter((a) => a.model === model)
    .map((a) => ({
      key: a.name ?? '',
      text: w.approval(
        a.fieldDisplayName ?? '',
        words.state[a.state ?? 'APPROVAL_STATE_UNSPECIFIED'],
        whenText(a.createTime),
      ),
      plan: a.launchPlan,
      day: a.day,
      field: a.field,
      ...(a.limits ? { limits: a.limits } : {}),
    }));
  return [...typed, ...kept];
}

/** The last revision against the draft, or the last two revisions; both on the first plan and day there is. */
export function firstSides(sources: Sources): { from: Side; to: Side } {
  const [newest, before] = sources.models;
  const flight = sources.flights[0]?.key ?? '';
  const side = (model: ModelChoice | undefined): Side => ({
    model: model?.key ?? '',
    plan: flight,
    day: flight,
    field: '',
  });
  return { from: side(before ?? newest), to: side(newest) };
}

/** Name of the field that a side is on: the one chosen, or that of its launch plan. */
export function fieldOf(side: Side, sources: Sources): string {
  return side.field || (sources.flights.find((f) => f.key === side.plan)?.field ?? '');
}

/** What a side is made of, in one line. */
export function sideText(side: Side, sources: Sources): string {
  const flight = (key: string): string => sources.flights.find((f) => f.key === key)?.text ?? w.noFlight;
  const field = sources.fields.find((f) => f.name === fieldOf(side, sources))?.displayName ?? w.noField;
  const model = sources.models.find((m) => m.key === side.model)?.text ?? w.noFlight;
  return w.side(model, flight(side.plan), flight(side.day), field);
}

/** The one document of a side. On another field than the plan's own the launch starts from that field's own strip or spot. */
export function documentOf(side: Side, sources: Sources): AssessmentInput {
  const flight = sources.flights.find((f) => f.key === side.plan);
  const day = sources.flights.find((f) => f.key === side.day)?.day;
  const description = sources.fields.find((f) => f.name === fieldOf(side, sources))?.description;
  const input: AssessmentInput = {
    model: sources.models.find((m) => m.key === side.model)?.description ?? {},
    ...(description ? { field: description } : {}),
    launchPlan: flight?.plan ?? {},
    day: day ?? {},
    ...(flight?.limits ? { limits: flight.limits } : {}),
  };
  const elsewhere = side.field !== '' && side.field !== flight?.field;
  return elsewhere ? onOtherField(input) : input;
}

/** The plan without the names of places that its field does not have, started from that field's own strip or spot. */
function onOtherField(input: AssessmentInput): AssessmentInput {
  const { strip, launchSpot, landingPlace, ...bare } = input.launchPlan ?? {};
  const { strips = [], launchSpots = [], landingAreas = [] } = input.field ?? {};
  const known = (list: { name?: string }[], name: string | undefined): name is string =>
    name !== undefined && list.some((p) => p.name === name);
  const launchPlan = {
    ...bare,
    ...(known(strips, strip) ? { strip } : {}),
    ...(known(launchSpots, launchSpot) ? { launchSpot } : {}),
    ...(known([...strips, ...landingAreas], landingPlace) ? { landingPlace } : {}),
  };
  const moved = { ...input, launchPlan };
  return bare.method ? wayOf(moved, bare.method).input : moved;
}
