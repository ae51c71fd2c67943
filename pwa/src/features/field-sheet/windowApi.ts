import { api, ask } from '../../app/api';
import { Problem } from '../../app/problem';
import type { AssessmentInput, WindWindow } from '../../app/wire';
import { core } from '../../worker/core.svelte';

/**
 * The winds in which launch and circuit hold, for every way the field offers; keeps nothing. It takes seconds, so the server is asked first, and the core of
 * this device where no server is reached.
 */
export async function previewWindow(
  club: string,
  input: AssessmentInput,
  signal: AbortSignal,
): Promise<WindWindow> {
  try {
    return await ask(
      api.POST('/v1/clubs/{parent}/assessments:previewWindow', {
        params: { path: { parent: club } },
        body: input,
        signal,
      }),
    );
  } catch (error) {
    if (error instanceof Problem && error.isOffline) return core.window(input, signal);
    throw error;
  }
}
