import { api, ask } from '../../app/api';
import type { AssessmentInput, WindWindow } from '../../app/wire';

/** The winds in which launch and circuit hold, for every way the field offers; keeps nothing. */
export function previewWindow(
  club: string,
  input: AssessmentInput,
  signal: AbortSignal,
): Promise<WindWindow> {
  return ask(
    api.POST('/v1/clubs/{parent}/assessments:previewWindow', {
      params: { path: { parent: club } },
      body: input,
      signal,
    }),
  );
}
