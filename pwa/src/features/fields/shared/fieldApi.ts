import { api, ask, idOf, newRequestId } from '../../../app/api';
import type {
  Approval,
  DecodeSurveyResponse,
  Field,
  FieldDescription,
  FieldRemark,
  FieldVersion,
} from '../../../app/wire';
import type { FieldDraft } from './fieldDraft';
import type { Place } from './geodesy';

const at = (club: string, id: string): { path: { name: string; name_1: string } } => ({
  path: { name: club, name_1: id },
});

export function getField(club: string, id: string): Promise<Field> {
  return ask(api.GET('/v1/clubs/{name}/fields/{name_1}', { params: at(club, id) }));
}

/** A former description of a field. */
export function getFieldVersion(club: string, id: string, number: number): Promise<FieldVersion> {
  return ask(
    api.GET('/v1/clubs/{name}/fields/{name_1}/versions/{number}', {
      params: { path: { name: club, name_1: id, number } },
    }),
  );
}

/** Approvals at a field that this person may see. */
export async function approvalsAt(club: string, field: string): Promise<Approval[]> {
  const found: Approval[] = [];
  let pageToken = '';
  do {
    const query = { pageSize: 200, ...(pageToken ? { pageToken } : {}) };
    const page = await ask(
      api.GET('/v1/clubs/{parent}/approvals', { params: { path: { parent: club }, query } }),
    );
    found.push(...(page.approvals ?? []).filter((a) => a.field === field));
    pageToken = page.nextPageToken ?? '';
  } while (pageToken !== '');
  return found;
}

/** What is wrong with a description, and what is worth a second look. */
export async function checkField(
  club: string,
  description: FieldDescription,
  signal: AbortSignal,
): Promise<FieldRemark[]> {
  const answer = await ask(
    api.POST('/v1/clubs/{parent}/fields:check', {
      params: { path: { parent: club } },
      body: description,
      signal,
    }),
  );
  return answer.remarks ?? [];
}

/** Largest survey file the server reads, in bytes. */
export const surveyLimit = 512 * 1024;

const base64 = (bytes: Uint8Array): string => {
  let text = '';
  for (let i = 0; i < bytes.length; i += 8192) text += String.fromCharCode(...bytes.subarray(i, i + 8192));
  return btoa(text);
};

/** Reads a survey file into places in metres; nothing is kept. */
export async function decodeSurvey(
  club: string,
  file: File,
  datum: Place | undefined,
  height: number | undefined,
): Promise<DecodeSurveyResponse> {
  return ask(
    api.POST('/v1/clubs/{parent}/fields:decodeSurvey', {
      params: { path: { parent: club } },
      body: {
        fileName: file.name,
        content: base64(new Uint8Array(await file.arrayBuffer())),
        ...(datum ? { datumLatitudeDegrees: datum.latitude, datumLongitudeDegrees: datum.longitude } : {}),
        ...(height === undefined ? {} : { datumHeightMeters: height }),
      },
    }),
  );
}

/** Keeps a new field, or the next version of one. */
export function keepField(club: string, draft: FieldDraft): Promise<Field> {
  const { description, rests } = draft;
  const body = { displayName: description.displayName ?? '', description };
  if (!rests)
    return ask(
      api.POST('/v1/clubs/{parent}/fields', {
        params: { path: { parent: club }, query: { requestId: newRequestId() } },
        body,
      }),
    );
  return ask(
    api.PATCH('/v1/clubs/{field.name}/fields/{field.name_1}', {
      params: {
        path: { 'field.name': club, 'field.name_1': idOf(rests.name) },
        query: { updateMask: 'display_name,description', requestId: newRequestId() },
      },
      body: { ...body, name: rests.name, etag: rests.etag },
    }),
  );
}
