/** How a question to the core ended: with its answer or a refusal, both JSON; stopped because it was cancelled; or broken, with what broke. */
export type Answer = { kind: 'answer' | 'refused' | 'stopped' | 'broken'; text: string };

/** Told between passes how many inputs of how many are moved. */
export type Progress = (done: number, total: number) => void;

/** How a spread is drawn: from how many samples, which ones, and whether remedies are looked for as well. */
export type Draw = { samples: number; seed: number; remedies?: boolean };

/** What the page asks of the worker. Tickets are chosen by the asker and name a question until it ends. */
export type CoreWorker = {
  /** Version of the core, once it can be asked. */
  version(): Promise<string>;
  /** The report of one document. */
  report(ticket: number, text: string, progress?: Progress): Promise<Answer>;
  /** The same with bands and probabilities from samples. */
  spread(ticket: number, text: string, draw: Draw, progress?: Progress): Promise<Answer>;
  /** What changed between two documents, and which findings moved by it. */
  compare(ticket: number, from: string, to: string): Promise<Answer>;
  /** Values and verdicts of one document, without bands and drawings: they come sooner than its report. */
  values(text: string): Promise<Answer>;
  /** The report with the least changes that let its open findings hold; no samples: with bands by first order. */
  remedies(ticket: number, text: string, draw: Draw, progress?: Progress): Promise<Answer>;
  /** The winds in which one document holds. */
  window(text: string): Promise<Answer>;
  /** Stops a report between two passes. */
  cancel(ticket: number): void;
  /** Bytes that the core holds after a collection. */
  heap(): Promise<number>;
};
