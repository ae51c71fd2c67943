import { api, ask, newRequestId } from '../../../app/api';
import type { Approval, ApprovalState, Assessment, FieldDescription } from '../../../app/wire';
import type { ActionName } from './actions';

const at = (club: string, id: string): { path: { name: string; name_1: string } } => ({
  path: { name: club, name_1: id },
});

export function getApproval(club: string, id: string): Promise<Approval> {
  return ask(api.GET('/v1/clubs/{name}/approvals/{name_1}', { params: at(club, id) }));
}

export function getAssessment(club: string, id: string): Promise<Assessment> {
  return ask(api.GET('/v1/clubs/{name}/assessments/{name_1}', { params: at(club, id) }));
}

export async function getFieldDescription(club: string, id: string): Promise<FieldDescription> {
  const field = await ask(api.GET('/v1/clubs/{name}/fields/{name_1}', { params: at(club, id) }));
  return field.description;
}

type ListOptions = { mine?: boolean; states?: ApprovalState[]; pageToken?: string };

/** One page of approvals, newest first as the server orders them. */
export async function listApprovals(
  club: string,
  options: ListOptions,
): Promise<{ approvals: Approval[]; next: string }> {
  const query = { pageSize: 50, ...options };
  const answer = await ask(
    api.GET('/v1/clubs/{parent}/approvals', { params: { path: { parent: club }, query } }),
  );
  return { approvals: answer.approvals ?? [], next: answer.nextPageToken ?? '' };
}

/** What a person typed for a decision. */
export type Typed = { etag: string; reason: string; conditions: string[] };

/** Sends a decision other than a signature. */
export function decide(
  club: string,
  id: string,
  action: Exclude<ActionName, 'sign'>,
  typed: Typed,
): Promise<Approval> {
  const body = {
    etag: typed.etag,
    requestId: newRequestId(),
    ...(typed.reason ? { reason: typed.reason } : {}),
    ...(action === 'passDesk' ? { conditions: typed.conditions } : {}),
  };
  const init = { params: at(club, id), body };
  switch (action) {
    case 'beginReview':
      return ask(api.POST('/v1/clubs/{name}/approvals/{name_1}:beginReview', init));
    case 'passDesk':
      return ask(api.POST('/v1/clubs/{name}/approvals/{name_1}:passDesk', init));
    case 'passBench':
      return ask(api.POST('/v1/clubs/{name}/approvals/{name_1}:passBench', init));
    case 'recordFlight':
      return ask(api.POST('/v1/clubs/{name}/approvals/{name_1}:recordFlight', init));
    case 'return':
      return ask(api.POST('/v1/clubs/{name}/approvals/{name_1}:return', init));
    case 'release':
      return ask(api.POST('/v1/clubs/{name}/approvals/{name_1}:release', init));
    case 'hold':
      return ask(api.POST('/v1/clubs/{name}/approvals/{name_1}:hold', init));
    case 'refuse':
      return ask(api.POST('/v1/clubs/{name}/approvals/{name_1}:refuse', init));
    case 'withdraw':
      return ask(api.POST('/v1/clubs/{name}/approvals/{name_1}:withdraw', init));
  }
}

/** An officer's answer to a rule, on the version it was read on. */
export type Confirmed = {
  rule: string;
  confirmed: boolean;
  date: string;
  reason: string;
  etag: string;
  requestId: string;
};

export function confirmRule(club: string, id: string, body: Confirmed): Promise<Approval> {
  return ask(api.POST('/v1/clubs/{name}/approvals/{name_1}:confirmRule', { params: at(club, id), body }));
}

/** Signs exactly the digest that was shown. */
export function sign(
  club: string,
  id: string,
  etag: string,
  digest: string,
  password: string,
): Promise<Approval> {
  return ask(
    api.POST('/v1/clubs/{name}/approvals/{name_1}:sign', {
      params: at(club, id),
      body: {
        etag,
        requestId: newRequestId(),
        password,
        signingDigest: digest,
        deviceTime: new Date().toISOString(),
      },
    }),
  );
}
