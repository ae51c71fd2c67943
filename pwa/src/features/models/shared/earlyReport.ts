import type { Report } from '../../../app/wire';

/** What is shown while bands and drawings are still computed: the new values and verdicts, with the drawings of the report before. */
export function earlyReport(before: Report | null, values: Report): Report {
  return { ...before, ...values };
}
