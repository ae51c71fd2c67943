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

/** Time of day to the second: "14:05:09". */
export function clockText(time: string): string {
  return new Date(time).toLocaleTimeString('en-GB');
}
