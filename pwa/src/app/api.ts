import createClient, { type Middleware } from 'openapi-fetch';
import type { paths } from '../gen/api';
import { Problem, problemFrom, type RefusalBody } from './problem';
import { words } from './words';

const listeners = new Set<() => void>();

/** Calls back when the server says that nobody is signed in. */
export function onSignedOut(listener: () => void): void {
  listeners.add(listener);
}

const reached = new Set<() => void>();

/** Calls back whenever the server answered anything at all. */
export function onReached(listener: () => void): void {
  reached.add(listener);
}

const refusals: Middleware = {
  async onResponse({ response }) {
    for (const listener of reached) listener();
    if (response.ok) return;
    const body = (await response
      .clone()
      .json()
      .catch(() => undefined)) as RefusalBody | undefined;
    const id = response.headers.get('x-request-id') ?? '';
    if (response.status === 401) for (const listener of listeners) listener();
    throw problemFrom(response.status, body, id, words.problem.status(response.status));
  },
  onError({ error }) {
    if (error instanceof DOMException && error.name === 'AbortError') return error;
    return new Problem(0, words.problem.offline, '');
  },
};

/** The typed client; every call throws a Problem when it does not succeed. */
export const api = createClient<paths>({ baseUrl: '/', credentials: 'same-origin' });
api.use(refusals);

/** The body of an answer; an empty one is an error because callers count on it. */
export async function ask<T>(call: Promise<{ data?: T | undefined }>): Promise<T> {
  const { data } = await call;
  if (data === undefined) throw new Problem(200, words.problem.empty, '');
  return data;
}

/** The id part of a resource name: last segment. */
export function idOf(name: string | undefined): string {
  return name?.split('/').pop() ?? '';
}

/** The club's id within any resource name. */
export function clubOf(name: string | undefined): string {
  return name?.split('/')[1] ?? '';
}

/** Id under which a repeated send is recognised as the same one. */
export function newRequestId(): string {
  return crypto.randomUUID();
}
