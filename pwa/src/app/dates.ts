/** Date and time as people write them: "25 Nov 2026, 14:05". */
export function whenText(time: string | undefined): string {
  if (!time) return '\u2013';
  const date = new Date(time);
  if (Number.isNaN(date.getTime())) return time;
  return new Intl.DateTimeFormat('en-GB', { dateStyle: 'medium', timeStyle: 'short' }).format(date);
}

/** Value of a datetime-local box for a time, in this device's zone. */
export function toBox(time: string | undefined): string {
  if (!time) return '';
  const date = new Date(time);
  if (Number.isNaN(date.getTime())) return '';
  return new Date(date.getTime() - date.getTimezoneOffset() * 60000).toISOString().slice(0, 16);
}

/** RFC 3339 time with offset from a datetime-local box; absent when empty. */
export function fromBox(text: string): string | undefined {
  if (text === '') return undefined;
  const date = new Date(text);
  return Number.isNaN(date.getTime()) ? undefined : date.toISOString().replace(/\.\d+Z$/, 'Z');
}

const wall = /^(\d{4}-\d{2}-\d{2}T\d{2}:\d{2}).*?(Z|[+-]\d{2}:\d{2})$/;

/** Value of a datetime-local box for a time of the document: by the clock it was written by, wherever this device is. */
export function toFieldBox(time: string | undefined): string {
  return wall.exec(time ?? '')?.[1] ?? '';
}

/** Offset of the clock that a time was written by: "+01:00", or "Z"; empty for none. */
export function offsetOf(time: string | undefined): string {
  return wall.exec(time ?? '')?.[2] ?? '';
}

/** RFC 3339 time from a datetime-local box by the clock of an earlier time, else by this device's; absent when empty. */
export function fromFieldBox(text: string, before: string | undefined): string | undefined {
  if (text === '' || Number.isNaN(new Date(text).getTime())) return undefined;
  return `${text.slice(0, 16)}:00${offsetOf(before) || deviceOffset(new Date(text))}`;
}

/** Offset of this device's clock at a moment: "+01:00". */
function deviceOffset(moment: Date): string {
  const minutes = -moment.getTimezoneOffset();
  const two = (n: number): string => String(n).padStart(2, '0');
  const size = Math.abs(minutes);
  return `${minutes < 0 ? '-' : '+'}${two(Math.floor(size / 60))}:${two(size % 60)}`;
}

/** Time of day to the second: "14:05:09". */
export function clockText(time: string): string {
  return new Date(time).toLocaleTimeString('en-GB');
}
