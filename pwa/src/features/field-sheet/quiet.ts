import { toFieldBox } from '../../app/dates';
import type { FieldDescription } from '../../app/wire';

/** Minutes since midnight of a time of day as "19:00"; undefined when it is none. */
function minutes(text: string | undefined): number | undefined {
  const match = /^(\d{2}):(\d{2})$/.exec(text ?? '');
  return match ? Number(match[1]) * 60 + Number(match[2]) : undefined;
}

/** Whether a planned time lies in the field's quiet hours, by the clock it was written by; hours that run over midnight included. */
export function inQuietHours(permission: FieldDescription['permission'], time: string | undefined): boolean {
  const [from, to] = [minutes(permission?.quietFrom), minutes(permission?.quietTo)];
  const at = minutes(toFieldBox(time).slice(11));
  if (at === undefined || from === undefined || to === undefined || from === to) return false;
  return from < to ? at >= from && at < to : at >= from || at < to;
}
