import { api, ask, clubOf, onReached, onSignedOut } from './api';
import { keepText, keptText } from './kept';
import { Problem } from './problem';
import type { Person, Role } from './wire';

const key = 'pitgate.person';

type Session = { person: Person | null; ready: boolean; offline: boolean };

function kept(): Person | null {
  try {
    return JSON.parse(keptText(key) ?? 'null') as Person | null;
  } catch {
    return null;
  }
}

/** Who is signed in. */
export const session: Session = $state({ person: null, ready: false, offline: false });

function become(person: Person | null): void {
  session.person = person;
  keepText(key, person ? JSON.stringify(person) : null);
}

/** Asks the server who is signed in; with no server, the last person goes on reading what is kept here. */
export async function openSession(): Promise<void> {
  try {
    become(await ask(api.GET('/v1/me')));
  } catch (error) {
    if (error instanceof Problem && error.isOffline) {
      session.offline = true;
      session.person = kept();
    } else become(null);
  }
  session.ready = true;
}

onReached(() => {
  session.offline = false;
});

onSignedOut(() => {
  become(null);
});

/** Signs in with club, address and password. */
export async function signIn(club: string, email: string, password: string): Promise<void> {
  const answer = await ask(
    api.POST('/v1/clubs/{parent}:signIn', { params: { path: { parent: club } }, body: { email, password } }),
  );
  become(answer.person ?? null);
}

/** People of the demonstration; undefined when this server is none. */
export async function demoPeople(): Promise<Person[] | undefined> {
  try {
    return (await ask(api.GET('/v1/demo:people'))).people ?? [];
  } catch {
    return undefined;
  }
}

/** Signs in as one of the demonstration's people. */
export async function signInDemo(person: string): Promise<void> {
  const answer = await ask(api.POST('/v1/demo:signIn', { body: { person } }));
  become(answer.person ?? null);
}

/** Ends the session here and on the server. */
export async function signOut(): Promise<void> {
  try {
    await api.POST('/v1/me:signOut', { body: {} });
  } finally {
    become(null);
  }
}

/** True when the signed-in person holds the role. */
export function has(role: Role): boolean {
  return session.person?.roles?.includes(role) ?? false;
}

/** Id of the signed-in person's club, for paths. */
export function club(): string {
  return clubOf(session.person?.name);
}
