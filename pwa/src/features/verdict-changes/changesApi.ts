import { api, ask, idOf } from '../../app/api';
import type { VerdictChanges } from '../../app/wire';

type ChangesQuery = { approval?: string; unread?: boolean };

/** Approvals whose verdicts changed with the rules or the core, newest first; all pages. */
export async function listChanges(club: string, query: ChangesQuery): Promise<VerdictChanges[]> {
  const found: VerdictChanges[] = [];
  let token = '';
  do {
    const answer = await ask(
      api.GET('/v1/clubs/{parent}/verdictChanges', {
        params: {
          path: { parent: club },
          query: { pageSize: 200, ...query, ...(token ? { pageToken: token } : {}) },
        },
      }),
    );
    found.push(...(answer.verdictChanges ?? []));
    token = answer.nextPageToken ?? '';
  } while (token);
  return found;
}

/** The signed-in person has read of it. */
export function markRead(club: string, change: VerdictChanges): Promise<VerdictChanges> {
  return ask(
    api.POST('/v1/clubs/{name}/verdictChanges/{name_1}:markRead', {
      params: { path: { name: club, name_1: idOf(change.name) } },
      body: {},
    }),
  );
}
