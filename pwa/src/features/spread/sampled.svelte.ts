import { Problem } from '../../app/problem';
import { report as trouble } from '../../app/trouble.svelte';
import type { AssessmentInput, Report } from '../../app/wire';
import type { Draw, Progress } from '../../worker/answer';
import type { Answered, Place } from '../../worker/nearest';

/** How a sampled report is asked for; tests put their own in its place. */
export type Sampler = (
  input: AssessmentInput,
  draw: Draw,
  signal: AbortSignal,
  progress: Progress,
) => Promise<Answered<Report>>;

/** One sampled report: drawn when asked for, with progress, cancelled at any time; what was drawn before stays. */
export class Sampled {
  state: 'empty' | 'running' | 'done' | 'cancelled' | 'failed' = $state('empty');
  done = $state(0);
  total = $state(0);
  report: Report | null = $state.raw(null);
  /** The document that the report belongs to. */
  asked: AssessmentInput | null = $state.raw(null);
  place: Place = $state('device');
  problem: Problem | null = $state.raw(null);
  /** From the question to the report, in ms. */
  took = $state(0);
  #running: AbortController | undefined;

  constructor(private readonly sampler: Sampler) {}

  async run(input: AssessmentInput, draw: Draw): Promise<void> {
    this.#running?.abort();
    const mine = new AbortController();
    this.#running = mine;
    [this.state, this.done, this.total, this.problem] = ['running', 0, 0, null];
    const start = performance.now();
    try {
      const { answer, place } = await this.sampler(input, draw, mine.signal, (done, total) => {
        if (!mine.signal.aborted) [this.done, this.total] = [done, total];
      });
      if (mine.signal.aborted) return;
      [this.report, this.asked, this.place, this.state] = [answer, input, place, 'done'];
      this.took = performance.now() - start;
    } catch (error) {
      if (mine.signal.aborted) return;
      this.state = 'failed';
      if (error instanceof Problem) this.problem = error;
      else trouble(error);
    }
  }

  cancel(): void {
    if (this.state !== 'running') return;
    this.#running?.abort();
    this.state = 'cancelled';
  }

  /** The page is left. */
  stop(): void {
    this.#running?.abort();
  }
}
