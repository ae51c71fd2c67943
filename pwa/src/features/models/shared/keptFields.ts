import { keepText, keptText } from '../../../app/kept';
import { Problem } from '../../../app/problem';
import type { Field } from '../../../app/wire';

const name = (club: string): string => `pitgate.fields.${club}`;

/** The club's fields from the server, kept on this device; without a server those kept last, where there are any. */
export async function withKept(club: string, asked: Promise<Field[]>): Promise<Field[]> {
  try {
    const fields = await asked;
    keepText(name(club), JSON.stringify(fields));
    return fields;
  } catch (error) {
    if (!(error instanceof Problem && error.isOffline)) throw error;
    const kept = keptText(name(club));
    if (kept === null) throw error;
    return JSON.parse(kept) as Field[];
  }
}
