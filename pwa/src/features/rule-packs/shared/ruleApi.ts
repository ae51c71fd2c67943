import { api, ask, idOf, newRequestId } from '../../../app/api';
import type {
  AssessmentInput,
  ComposeLimitsResponse,
  RulePack,
  RulePackContent,
  RulePackPreview,
} from '../../../app/wire';

const at = (club: string, id: string): { path: { name: string; name_1: string } } => ({
  path: { name: club, name_1: id },
});

/** Every version of every pack of the club, newest first. */
export async function listPacks(club: string): Promise<RulePack[]> {
  const answer = await ask(
    api.GET('/v1/clubs/{parent}/rulePacks', {
      params: { path: { parent: club }, query: { pageSize: 1000 } },
    }),
  );
  return answer.rulePacks ?? [];
}

export function getPack(club: string, id: string): Promise<RulePack> {
  return ask(api.GET('/v1/clubs/{name}/rulePacks/{name_1}', { params: at(club, id) }));
}

/** Packs that come with the program. */
export async function listSupplied(club: string): Promise<RulePackContent[]> {
  const answer = await ask(
    api.GET('/v1/clubs/{parent}/suppliedRulePacks', { params: { path: { parent: club } } }),
  );
  return answer.packs ?? [];
}

/** Opens a draft; its content must be a whole pack. */
export function createPack(club: string, content: RulePackContent): Promise<RulePack> {
  return ask(
    api.POST('/v1/clubs/{parent}/rulePacks', {
      params: { path: { parent: club }, query: { requestId: newRequestId() } },
      body: { content },
    }),
  );
}

/** Keeps a draft on the version it was typed on. */
export function updatePack(
  club: string,
  rests: { name: string; etag: string },
  content: RulePackContent,
): Promise<RulePack> {
  return ask(
    api.PATCH('/v1/clubs/{rule_pack.name}/rulePacks/{rule_pack.name_1}', {
      params: {
        path: { 'rule_pack.name': club, 'rule_pack.name_1': idOf(rests.name) },
        query: { updateMask: 'content', requestId: newRequestId() },
      },
      body: { ...rests, content },
    }),
  );
}

/** Begins to compute which open approvals would change a verdict, or finds what was computed already. */
export function beginPreview(club: string, id: string): Promise<RulePackPreview> {
  return ask(
    api.POST('/v1/clubs/{name}/rulePacks/{name_1}:beginPreview', { params: at(club, id), body: {} }),
  );
}

export function getPreview(club: string, id: string): Promise<RulePackPreview> {
  return ask(api.GET('/v1/clubs/{name}/rulePackPreviews/{name_1}', { params: at(club, id) }));
}

export function cancelPreview(club: string, id: string): Promise<RulePackPreview> {
  return ask(
    api.POST('/v1/clubs/{name}/rulePackPreviews/{name_1}:cancel', { params: at(club, id), body: {} }),
  );
}

/** One committee member's word: the first proposes, the second publishes. */
export function publishPack(club: string, pack: RulePack): Promise<RulePack> {
  return ask(
    api.POST('/v1/clubs/{name}/rulePacks/{name_1}:publish', {
      params: at(club, idOf(pack.name)),
      body: { etag: pack.etag ?? '', requestId: newRequestId() },
    }),
  );
}

/** One committee member's word to take a pack out of force; a draft goes at the first. */
export function retirePack(club: string, pack: RulePack): Promise<RulePack> {
  return ask(
    api.POST('/v1/clubs/{name}/rulePacks/{name_1}:retire', {
      params: at(club, idOf(pack.name)),
      body: { etag: pack.etag ?? '', requestId: newRequestId() },
    }),
  );
}

/** The limits that the packs in force make for a document, and which rule gave each figure; a draft may stand in. */
export function composeLimits(
  club: string,
  input: AssessmentInput,
  withRulePack = '',
  signal?: AbortSignal,
): Promise<ComposeLimitsResponse> {
  return ask(
    api.POST('/v1/clubs/{parent}/rulePacks:composeLimits', {
      params: { path: { parent: club } },
      body: { input, ...(withRulePack === '' ? {} : { withRulePack }) },
      ...(signal ? { signal } : {}),
    }),
  );
}
