import type { FieldDescription } from '../../app/wire';

/** Minutes since midnight of a time of day as "19:00"; undefined when it is none. */
function minutes(text: string | undefined): number | undefined {
  const match = /^(\d{2}):(\d{2})$/.exec(text ?? '');
  return match ? Number(match[1]) * 60 + Number(match[2]) : undefined;
}

/** Whether a moment lies in the field's quiet hours, by this device's clock; hours that run over midnight included. */
export function inQuietHours(permission: FieldDescription['permission'], moment: Date): boolean {
  const [from, to] = [minutes(permission?.quietFrom), minutes(permission?.quietTo)];
  if (from === undefined || to === undefined || from === to) return false;
  const at = moment.getHours() * 60 + moment.getMinutes();
  return from < to ? at >= from && at < to : at >= from || at < to;
}
