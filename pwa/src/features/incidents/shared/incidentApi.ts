import { api, ask, idOf, newRequestId } from '../../../app/api';
import type { Incident, Lesson, Model, Person, TryLessonResponse } from '../../../app/wire';

const at = (club: string, id: string): { path: { name: string; name_1: string } } => ({
  path: { name: club, name_1: id },
});

export async function listIncidents(
  club: string,
  pageToken: string,
): Promise<{ incidents: Incident[]; next: string }> {
  const query = { pageSize: 50, ...(pageToken ? { pageToken } : {}) };
  const answer = await ask(
    api.GET('/v1/clubs/{parent}/incidents', { params: { path: { parent: club }, query } }),
  );
  return { incidents: answer.incidents ?? [], next: answer.nextPageToken ?? '' };
}

export function getIncident(club: string, id: string): Promise<Incident> {
  return ask(api.GET('/v1/clubs/{name}/incidents/{name_1}', { params: at(club, id) }));
}

/** Reports an incident; the same request id again reports nothing twice. */
export function createIncident(club: string, incident: Incident, requestId: string): Promise<Incident> {
  return ask(
    api.POST('/v1/clubs/{parent}/incidents', {
      params: { path: { parent: club }, query: { requestId } },
      body: incident,
    }),
  );
}

/** Sends one photo as base64, which is how bytes travel in this API. */
export async function addPhoto(club: string, id: string, photo: File): Promise<Incident> {
  const bytes = new Uint8Array(await photo.arrayBuffer());
  let text = '';
  for (let i = 0; i < bytes.length; i += 0x8000)
    text += String.fromCharCode(...bytes.subarray(i, i + 0x8000));
  return ask(
    api.POST('/v1/clubs/{name}/incidents/{name_1}:addPhoto', {
      params: at(club, id),
      body: { content: btoa(text), requestId: newRequestId() },
    }),
  );
}

/** A photo as an address an image can show. */
export async function photoAddress(name: string): Promise<string> {
  const parts = name.split('/');
  const photo = await ask(
    api.GET('/v1/clubs/{name}/incidents/{name_1}/photos/{name_2}', {
      params: { path: { name: parts[1] ?? '', name_1: parts[3] ?? '', name_2: parts[5] ?? '' } },
    }),
  );
  return `data:image/jpeg;base64,${photo.content ?? ''}`;
}

/** Parts of an incident that a review changes. */
export type Review = Pick<Incident, 'state' | 'occurrenceCategories' | 'causes' | 'actions'>;

/** Keeps a review on the version it was typed on. */
export function keepReview(club: string, incident: Incident, review: Review): Promise<Incident> {
  const { name, etag, title, narrative, occurTime } = incident;
  return ask(
    api.PATCH('/v1/clubs/{incident.name}/incidents/{incident.name_1}', {
      params: {
        path: { 'incident.name': club, 'incident.name_1': idOf(name) },
        query: { updateMask: 'state,occurrence_categories,causes,actions', requestId: newRequestId() },
      },
      body: { name, etag, title, narrative, occurTime, ...review },
    }),
  );
}

export async function listLessons(club: string): Promise<Lesson[]> {
  const answer = await ask(
    api.GET('/v1/clubs/{parent}/lessons', { params: { path: { parent: club }, query: { pageSize: 1000 } } }),
  );
  return answer.lessons ?? [];
}

/** Matches a predicate against the club's models without keeping anything. */
export function tryLesson(club: string, predicate: string): Promise<TryLessonResponse> {
  return ask(
    api.POST('/v1/clubs/{parent}/lessons:try', { params: { path: { parent: club } }, body: { predicate } }),
  );
}

export function proposeLesson(club: string, lesson: Lesson): Promise<Lesson> {
  return ask(
    api.POST('/v1/clubs/{parent}/lessons', {
      params: { path: { parent: club }, query: { requestId: newRequestId() } },
      body: lesson,
    }),
  );
}

/** This committee member's word for a lesson. */
export function adoptLesson(club: string, lesson: Lesson): Promise<Lesson> {
  return ask(
    api.POST('/v1/clubs/{name}/lessons/{name_1}:adopt', {
      params: at(club, idOf(lesson.name)),
      body: { etag: lesson.etag ?? '', requestId: newRequestId() },
    }),
  );
}

export async function listPeople(club: string): Promise<Person[]> {
  const answer = await ask(
    api.GET('/v1/clubs/{parent}/people', { params: { path: { parent: club }, query: { pageSize: 1000 } } }),
  );
  return answer.people ?? [];
}

export async function allModels(club: string): Promise<Model[]> {
  const answer = await ask(
    api.GET('/v1/clubs/{parent}/models', { params: { path: { parent: club }, query: { pageSize: 1000 } } }),
  );
  return answer.models ?? [];
}
