import { keepText, keptText } from '../../../app/kept';
import { Problem } from '../../../app/problem';
import type { AssessmentInput, Limits } from '../../../app/wire';

/** Asks the server for the limits that the packs in force make for a document. */
export type Compose = (input: AssessmentInput, signal: AbortSignal) => Promise<Limits>;

/** Parts of a document by which it is told which rules apply; surfaces and ground say nothing about that. */
function asked(input: AssessmentInput): AssessmentInput {
  const { mass, engines, fuelSystem, radio } = input.model ?? {};
  const model = Object.fromEntries(
    Object.entries({ mass, engines, fuelSystem, radio }).filter(([, part]) => part !== undefined),
  );
  return {
    model,
    ...(input.launchPlan ? { launchPlan: input.launchPlan } : {}),
    ...(input.day?.time ? { day: { time: input.day.time } } : {}),
    ...(input.limits ? { limits: input.limits } : {}),
  };
}

const pause = 400;

/**
 * The club's rules as limits of the document that is typed. They come from the server, follow what decides which rules apply, and are kept on this
 * device for the field without a connection.
 */
export class ClubRules {
  /** True when the server could not be asked and the limits are those kept last. */
  old = false;
  #limits: Limits | undefined;
  /** What the limits were made for, and the owner's own figures in it. */
  #key = '';
  #own = '';
  #timer: ReturnType<typeof setTimeout> | undefined;

  constructor(
    private readonly club: string,
    private readonly compose: Compose,
  ) {}

  /** The document with the limits known now. `newer` is called when the server makes others for it. */
  async put(input: AssessmentInput, signal: AbortSignal, newer: () => void): Promise<AssessmentInput> {
    const question = asked(input);
    const own = JSON.stringify(input.limits ?? {});
    if (this.#limits === undefined || own !== this.#own) await this.#ask(question, own, signal);
    else if (JSON.stringify(question) !== this.#key || this.old) this.#later(question, own, newer);
    return this.#limits === undefined ? input : { ...input, limits: this.#limits };
  }

  /** Nothing is asked any more. */
  stop(): void {
    clearTimeout(this.#timer);
  }

  #later(question: AssessmentInput, own: string, newer: () => void): void {
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => {
      const before = JSON.stringify(this.#limits);
      void this.#ask(question, own, new AbortController().signal).then(() => {
        if (JSON.stringify(this.#limits) !== before) newer();
      });
    }, pause);
  }

  async #ask(question: AssessmentInput, own: string, signal: AbortSignal): Promise<void> {
    try {
      const limits = await this.compose(question, signal);
      [this.#limits, this.#own, this.#key, this.old] = [limits, own, JSON.stringify(question), false];
      keepText(this.#name, JSON.stringify(limits));
    } catch (error) {
      // What is wrong with the document is said by its own computation.
      if (!(error instanceof Problem && error.isOffline)) return;
      this.old = true;
      this.#limits ??= this.#kept();
      this.#own = own;
    }
  }

  get #name(): string {
    return `pitgate.rules.${this.club}`;
  }

  #kept(): Limits | undefined {
    const text = keptText(this.#name);
    return text === null ? undefined : (JSON.parse(text) as Limits);
  }
}
