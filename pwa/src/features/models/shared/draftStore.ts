import { openDB, type DBSchema, type IDBPDatabase } from 'idb';
import type { Draft } from './draft';

/** A draft as kept on this device. */
export type Kept<D = Draft> = { draft: D; time: string; schema: 1 };

interface Store extends DBSchema {
  drafts: { key: string; value: Kept<unknown> };
}

let opened: Promise<IDBPDatabase<Store>> | undefined;

function database(): Promise<IDBPDatabase<Store>> {
  opened ??= openDB<Store>('pitgate', 1, {
    upgrade(db) {
      db.createObjectStore('drafts');
    },
  });
  return opened;
}

/** The kept draft, or undefined. */
export async function loadDraft<D = Draft>(key: string): Promise<Kept<D> | undefined> {
  return (await database()).get('drafts', key) as Promise<Kept<D> | undefined>;
}

/** Keeps a draft; answers when it was kept. */
export async function keepDraft<D = Draft>(key: string, draft: D): Promise<string> {
  const time = new Date().toISOString();
  await (await database()).put('drafts', { draft, time, schema: 1 }, key);
  return time;
}

export async function dropDraft(key: string): Promise<void> {
  await (await database()).delete('drafts', key);
}
