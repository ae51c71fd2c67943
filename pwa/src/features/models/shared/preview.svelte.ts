import { report as trouble } from '../../../app/trouble.svelte';
import { Problem } from '../../../app/problem';
import type { AssessmentInput, Report } from '../../../app/wire';
import { core } from '../../../worker/core.svelte';
import { nearest, warm, type Place } from '../../../worker/nearest';
import { ClubRules } from '../../rule-packs/shared/clubRules';
import { composeLimits } from '../../rule-packs/shared/ruleApi';
import { earlyReport } from './earlyReport';
import { preview } from './modelApi';

/** How long typing has to pause before the server is asked, and before the core of this device is, in ms: that one leaves out what is outdated. */
const pause = { server: 350, device: 0 };

/** The findings that follow what is typed: the latest question wins, older ones are cancelled. */
export class LivePreview {
  report: Report | null = $state.raw(null);
  state: 'idle' | 'computing' | 'early' | 'fresh' | 'stale' = $state('idle');
  problem: Problem | null = $state.raw(null);
  /** Where the report was computed. */
  place: Place | null = $state(null);
  /** From the question to the report, in ms. */
  took = $state(0);
  /** The document as it was computed: with the limits that the club's rules make for it. */
  computed: AssessmentInput | null = $state.raw(null);
  /** True when the rules are those that this device kept last. */
  oldRules = $state(false);
  readonly #rules: ClubRules;
  #timer: ReturnType<typeof setTimeout> | undefined;
  #running: AbortController | undefined;

  constructor(private readonly club: string) {
    this.#rules = new ClubRules(
      club,
      async (input, signal) => (await composeLimits(club, input, '', signal)).limits ?? {},
    );
  }

  /** Asks again once typing pauses. */
  ask(input: AssessmentInput): void {
    this.stop();
    if (this.report) this.state = 'stale';
    this.#timer = setTimeout(() => void this.#run(input), core.version ? pause.device : pause.server);
  }

  /** Cancels what waits or runs. */
  stop(): void {
    clearTimeout(this.#timer);
    this.#running?.abort();
    this.#rules.stop();
  }

  /** Shows values and verdicts before bands and drawings are computed. What goes wrong is told by the report, which is asked for next. */
  async #showValues(input: AssessmentInput, signal: AbortSignal): Promise<void> {
    const values = await core.values(input, signal).catch(() => null);
    if (!values || signal.aborted) return;
    [this.report, this.place, this.problem, this.state] = [
      earlyReport(this.report, values),
      'device',
      null,
      'early',
    ];
  }

  async #run(typed: AssessmentInput): Promise<void> {
    const running = new AbortController();
    this.#running = running;
    this.state = 'computing';
    const start = performance.now();
    const input = await this.#rules.put(typed, running.signal, () => {
      this.ask(typed);
    });
    if (running.signal.aborted) return;
    const question = {
      here: (signal: AbortSignal) => core.report(input, signal),
      there: (signal: AbortSignal) => preview(this.club, input, signal),
    };
    try {
      if (core.version) await this.#showValues(input, running.signal);
      const { answer, place } = await nearest(core, question, running.signal);
      if (running.signal.aborted) return;
      this.took = performance.now() - start;
      [this.report, this.place, this.problem, this.state] = [answer, place, null, 'fresh'];
      [this.computed, this.oldRules] = [input, this.#rules.old];
      // What goes wrong here shows with the first question that is asked of the core.
      if (place === 'server') void warm(core, input).catch(() => undefined);
    } catch (error) {
      if (running.signal.aborted) return;
      this.state = this.report ? 'stale' : 'idle';
      if (error instanceof Problem) this.problem = error;
      else trouble(error);
    }
  }
}
