import type { Incident, IncidentAction } from '../../../app/wire';
import { linesOf } from '../../approval/shared/actions';
import type { Review } from './incidentApi';

/** A review as it is typed, with the version of the incident that it rests on. */
export type ReviewDraft = {
  rests: string;
  state: NonNullable<Incident['state']>;
  categories: string;
  causes: string;
  actions: IncidentAction[];
};

/** What the boxes show of an incident. */
export function reviewDraft(incident: Incident): ReviewDraft {
  return {
    rests: incident.etag ?? '',
    state: incident.state ?? 'INCIDENT_STATE_REPORTED',
    categories: (incident.occurrenceCategories ?? []).join(', '),
    causes: (incident.causes ?? []).join('\n'),
    actions: (incident.actions ?? []).map((a) => ({ ...a })),
  };
}

/** The review that is sent: empty lines and actions without words left out. */
export function reviewOf(draft: ReviewDraft): Review {
  return {
    state: draft.state,
    occurrenceCategories: draft.categories
      .split(',')
      .map((c) => c.trim().toUpperCase())
      .filter((c) => c !== ''),
    causes: linesOf(draft.causes),
    actions: draft.actions.filter((a) => (a.text ?? '').trim() !== ''),
  };
}
