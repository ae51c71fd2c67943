import { api, ask, idOf, newRequestId } from '../../../app/api';
import type { Approval, AssessmentInput, Field, Model, Report } from '../../../app/wire';
import type { Draw } from '../../../worker/answer';
import type { Draft } from './draft';
import { withKept } from './keptFields';

const at = (club: string, id: string): { path: { name: string; name_1: string } } => ({
  path: { name: club, name_1: id },
});

/** All fields of the club; without a server those that this device kept. */
export function listFields(club: string): Promise<Field[]> {
  return withKept(club, fetchFields(club));
}

async function fetchFields(club: string): Promise<Field[]> {
  const answer = await ask(
    api.GET('/v1/clubs/{parent}/fields', { params: { path: { parent: club }, query: { pageSize: 1000 } } }),
  );
  return answer.fields ?? [];
}

export async function listModels(
  club: string,
  pageToken: string,
): Promise<{ models: Model[]; next: string }> {
  const query = { pageSize: 50, ...(pageToken ? { pageToken } : {}) };
  const answer = await ask(
    api.GET('/v1/clubs/{parent}/models', { params: { path: { parent: club }, query } }),
  );
  return { models: answer.models ?? [], next: answer.nextPageToken ?? '' };
}

export function getModel(club: string, id: string): Promise<Model> {
  return ask(api.GET('/v1/clubs/{name}/models/{name_1}', { params: at(club, id) }));
}

/** Computes without keeping anything, with bands from samples when any are asked for. */
export function preview(
  club: string,
  input: AssessmentInput,
  signal: AbortSignal,
  draw?: Draw,
): Promise<Report> {
  const query = draw
    ? { sampleCount: draw.samples, seed: draw.seed, ...(draw.remedies ? { includeRemedies: true } : {}) }
    : {};
  return ask(
    api.POST('/v1/clubs/{parent}/assessments:preview', {
      params: { path: { parent: club }, query },
      body: input,
      signal,
    }),
  );
}

/** Registers the draft's model, or adds a revision to it when it is already known. */
export function keepModel(club: string, draft: Draft): Promise<Model> {
  const description = draft.doc.model ?? {};
  const model = { displayName: description.displayName ?? '', description };
  const known = draft.model;
  if (!known) {
    return ask(
      api.POST('/v1/clubs/{parent}/models', {
        params: { path: { parent: club }, query: { requestId: newRequestId() } },
        body: model,
      }),
    );
  }
  return ask(
    api.PATCH('/v1/clubs/{model.name}/models/{model.name_1}', {
      params: {
        path: { 'model.name': club, 'model.name_1': idOf(known.name) },
        query: { updateMask: 'display_name,description', requestId: newRequestId() },
      },
      body: { ...model, name: known.name, etag: known.etag },
    }),
  );
}

/** Opens an approval for a kept model and submits it at once. */
export function openApproval(club: string, model: string, draft: Draft): Promise<Approval> {
  return ask(
    api.POST('/v1/clubs/{parent}/approvals', {
      params: { path: { parent: club }, query: { requestId: newRequestId(), submit: true } },
      body: {
        model,
        field: draft.field,
        launchPlan: draft.doc.launchPlan ?? {},
        day: draft.doc.day ?? {},
        ...(draft.doc.limits ? { limits: draft.doc.limits } : {}),
        ...(draft.doc.confirmations ? { confirmations: draft.doc.confirmations } : {}),
        ...(draft.note ? { ownerNote: draft.note } : {}),
      },
    }),
  );
}

/** Sends a returned approval again on the model's latest revision. */
export function resubmit(club: string, id: string, etag: string, draft: Draft): Promise<Approval> {
  return ask(
    api.POST('/v1/clubs/{name}/approvals/{name_1}:submit', {
      params: at(club, id),
      body: {
        etag,
        requestId: newRequestId(),
        launchPlan: draft.doc.launchPlan ?? {},
        day: draft.doc.day ?? {},
        ...(draft.doc.confirmations ? { confirmations: draft.doc.confirmations } : {}),
        ownerNote: draft.note,
      },
    }),
  );
}
