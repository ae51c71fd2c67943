import { report as trouble } from '../../../app/trouble.svelte';
import { Problem } from '../../../app/problem';
import type { AssessmentInput, Report } from '../../../app/wire';
import { preview } from './modelApi';

const pause = 350;

/** The findings that follow what is typed: the latest question wins, older ones are cancelled. */
export class LivePreview {
  report: Report | null = $state(null);
  state: 'idle' | 'computing' | 'fresh' | 'stale' = $state('idle');
  problem: Problem | null = $state(null);
  #timer: ReturnType<typeof setTimeout> | undefined;
  #running: AbortController | undefined;

  constructor(private readonly club: string) {}

  /** Asks again once typing pauses. */
  ask(input: AssessmentInput): void {
    this.stop();
    if (this.report) this.state = 'stale';
    this.#timer = setTimeout(() => void this.#run(input), pause);
  }

  /** Cancels what waits or runs. */
  stop(): void {
    clearTimeout(this.#timer);
    this.#running?.abort();
  }

  async #run(input: AssessmentInput): Promise<void> {
    const running = new AbortController();
    this.#running = running;
    this.state = 'computing';
    try {
      this.report = await preview(this.club, input, running.signal);
      this.problem = null;
      this.state = 'fresh';
    } catch (error) {
      if (running.signal.aborted) return;
      this.state = this.report ? 'stale' : 'idle';
      if (error instanceof Problem) this.problem = error;
      else trouble(error);
    }
  }
}
