import { Problem } from '../app/problem';
import type { AssessmentInput } from '../app/wire';
import { CoreBroken, type Core } from './core.svelte';

/** Where an answer was computed. */
export type Place = 'device' | 'server';

export type Answered<T> = { answer: T; place: Place };

/** One question, as the device and as the server are asked it. */
export type Question<T> = {
  here: (signal: AbortSignal) => Promise<T>;
  there: (signal: AbortSignal) => Promise<T>;
};

/**
 * Asks the core of this device when it is there, the server when it is not or breaks. While the core still loads the server answers; without a server
 * the answer waits for the core.
 */
export async function nearest<T>(
  core: Core,
  question: Question<T>,
  signal: AbortSignal,
): Promise<Answered<T>> {
  const there = async (): Promise<Answered<T>> => ({ answer: await question.there(signal), place: 'server' });
  const here = async (): Promise<Answered<T>> => ({ answer: await question.here(signal), place: 'device' });
  if (core.version === '') {
    const loading = core.load();
    loading.catch(() => undefined);
    try {
      return await there();
    } catch (error) {
      if (!(error instanceof Problem && error.isOffline)) throw error;
      return loading.then(here, () => {
        throw error;
      });
    }
  }
  try {
    return await here();
  } catch (error) {
    if (error instanceof CoreBroken) return there();
    throw error;
  }
}

/** Asks the core of this device, waited for where it still loads; the server only when there is no core here or it breaks. For long runs. */
export async function deviceFirst<T>(question: Question<T>, signal: AbortSignal): Promise<Answered<T>> {
  try {
    return { answer: await question.here(signal), place: 'device' };
  } catch (error) {
    if (!(error instanceof CoreBroken)) throw error;
    signal.throwIfAborted();
    return { answer: await question.there(signal), place: 'server' };
  }
}

/** Computes a document once for nobody, so that the first number typed finds the core at its full speed. */
export async function warm(core: Core, input: AssessmentInput): Promise<void> {
  await core.load();
  await core.report(input, new AbortController().signal);
}
