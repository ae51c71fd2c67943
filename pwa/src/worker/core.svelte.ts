import type { Remote } from 'comlink';
import { problemFrom, type RefusalBody } from '../app/problem';
import type { AssessmentInput, Comparison, Report, WindWindow } from '../app/wire';
import type { Answer, CoreWorker, Draw, Progress } from './answer';

/** The core of this device cannot answer; the server may. */
export class CoreBroken extends Error {}

/** How a worker is started and spoken to; tests put their own in its place. */
export type Start = () => Promise<{ worker: Remote<CoreWorker>; end: () => void }>;

async function startWorker(): ReturnType<Start> {
  const { wrap } = await import('comlink');
  const thread = new Worker(new URL('./core.worker.ts', import.meta.url), { type: 'module' });
  const failed = new Promise<never>((_, reject) => {
    thread.onerror = () => {
      reject(new CoreBroken('the worker could not be started'));
    };
  });
  const worker = wrap<CoreWorker>(thread);
  await Promise.race([worker.version(), failed]);
  return {
    worker,
    end: () => {
      thread.terminate();
    },
  };
}

/** The core on this device: started when first asked for, started anew when it breaks. */
export class Core {
  /** Version that answers here; empty until it can. */
  version = $state('');
  #running: ReturnType<Start> | undefined;
  #ticket = 0;
  /** The values asked last, ended or not. */
  #values: Promise<unknown> = Promise.resolve();

  constructor(private readonly start: Start) {}

  /** Starts it; repeated calls wait for the same start. */
  load(): Promise<void> {
    this.#running ??= this.start();
    return this.#running
      .then(async ({ worker }) => {
        this.version = await worker.version();
      })
      .catch((error: unknown) => {
        this.#forget();
        throw new CoreBroken(String(error));
      });
  }

  /** The report of a document; cancelled by the signal between two passes. */
  report(input: AssessmentInput, signal: AbortSignal, progress?: Progress): Promise<Report> {
    return this.#watched(signal, progress, (worker, ticket, told) =>
      worker.report(ticket, JSON.stringify(input), told),
    );
  }

  /** The report of a document with bands and probabilities from samples, and with remedies when they are asked for; cancelled as a report is. */
  spread(input: AssessmentInput, draw: Draw, signal: AbortSignal, progress?: Progress): Promise<Report> {
    return this.#watched(signal, progress, (worker, ticket, told) =>
      draw.remedies
        ? worker.remedies(ticket, JSON.stringify(input), draw, told)
        : worker.spread(ticket, JSON.stringify(input), draw, told),
    );
  }

  /** What changed between two documents and which findings moved; cancelled as a report is. */
  compare(from: AssessmentInput, to: AssessmentInput, signal: AbortSignal): Promise<Comparison> {
    return this.#watched(signal, undefined, (worker, ticket) =>
      worker.compare(ticket, JSON.stringify(from), JSON.stringify(to)),
    );
  }

  async #watched<T>(
    signal: AbortSignal,
    progress: Progress | undefined,
    question: (worker: Remote<CoreWorker>, ticket: number, told: Progress | undefined) => Promise<Answer>,
  ): Promise<T> {
    const worker = await this.#worker();
    signal.throwIfAborted();
    const ticket = ++this.#ticket;
    const cancel = (): void => void worker.cancel(ticket);
    signal.addEventListener('abort', cancel);
    try {
      const told = progress ? (await import('comlink')).proxy(progress) : undefined;
      return this.#read(await question(worker, ticket, told), signal);
    } finally {
      signal.removeEventListener('abort', cancel);
    }
  }

  /**
   * Values and verdicts of a document, without bands and drawings. They have no place to stop: those cancelled while others are computed are not asked
   * for at all, so that who types fast waits for one of them at most.
   */
  async values(input: AssessmentInput, signal: AbortSignal): Promise<Report> {
    const worker = await this.#worker();
    const answer = this.#values.then(() => {
      signal.throwIfAborted();
      return worker.values(JSON.stringify(input));
    });
    this.#values = answer.catch(() => undefined);
    const told = await answer;
    signal.throwIfAborted();
    return this.#read(told, signal);
  }

  /** The winds in which a document holds; a cancelled one ends its worker, which has no place to stop. */
  async window(input: AssessmentInput, signal: AbortSignal): Promise<WindWindow> {
    const worker = await this.#worker();
    signal.throwIfAborted();
    const gone = new Promise<Answer>((resolve) => {
      signal.addEventListener('abort', () => {
        this.#end();
        resolve({ kind: 'stopped', text: '' });
      });
    });
    return this.#read(await Promise.race([worker.window(JSON.stringify(input)), gone]), signal);
  }

  async #worker(): Promise<Remote<CoreWorker>> {
    if (this.version === '') await this.load();
    if (!this.#running) throw new CoreBroken('ended');
    return (await this.#running).worker;
  }

  #read<T>(answer: Answer, signal: AbortSignal): T {
    switch (answer.kind) {
      case 'answer':
        return JSON.parse(answer.text) as T;
      case 'refused': {
        const body = JSON.parse(answer.text) as RefusalBody;
        throw problemFrom(400, body, '', body.message ?? '');
      }
      case 'stopped':
        signal.throwIfAborted();
        throw new CoreBroken('stopped by itself');
      case 'broken':
        this.#end();
        throw new CoreBroken(answer.text);
    }
  }

  #end(): void {
    void this.#running?.then(
      ({ end }) => {
        end();
      },
      () => undefined,
    );
    this.#forget();
  }

  #forget(): void {
    this.#running = undefined;
    this.#values = Promise.resolve();
    this.version = '';
  }
}

export const core = new Core(startWorker);
