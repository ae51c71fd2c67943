import { api, ask, idOf } from '../../../app/api';
import type { AssessmentInput, Comparison, ModelRevision } from '../../../app/wire';
import { core } from '../../../worker/core.svelte';
import { nearest } from '../../../worker/nearest';

/** The newest hundred revisions of a model, newest first. */
export async function listRevisions(club: string, model: string): Promise<ModelRevision[]> {
  const answer = await ask(
    api.GET('/v1/clubs/{parent}/models/{parent_1}/revisions', {
      params: { path: { parent: club, parent_1: idOf(model) }, query: { pageSize: 100 } },
    }),
  );
  return [...(answer.revisions ?? [])].sort((a, b) => (b.number ?? 0) - (a.number ?? 0));
}

/** One frozen description. */
export function getRevision(club: string, model: string, number: number): Promise<ModelRevision> {
  return ask(
    api.GET('/v1/clubs/{name}/models/{name_1}/revisions/{name_2}', {
      params: { path: { name: club, name_1: idOf(model), name_2: String(number) } },
    }),
  );
}

/** What changed between two documents and which findings moved, by this device or by the server. */
export async function compareInputs(
  club: string,
  from: AssessmentInput,
  to: AssessmentInput,
  signal: AbortSignal,
): Promise<Comparison> {
  const question = {
    here: (s: AbortSignal) => core.compare(from, to, s),
    there: (s: AbortSignal) =>
      ask(
        api.POST('/v1/clubs/{parent}/assessments:compare', {
          params: { path: { parent: club } },
          body: { from: { input: from }, to: { input: to } },
          signal: s,
        }),
      ),
  };
  return (await nearest(core, question, signal)).answer;
}
