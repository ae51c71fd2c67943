import { expose } from 'comlink';
import type { Answer, CoreWorker, Draw, Progress } from './answer';
import './go/wasm_exec.js';
import address from './go/pitgate.wasm?url';

type Done = (kind: Answer['kind'], text: string) => void;
type Watch = (done: number, total: number, resume: (goOn: boolean) => void) => boolean | undefined;

/** What the program hands over when it starts. */
type Program = {
  version: string;
  report(text: string, watch: Watch, done: Done): void;
  spread(text: string, samples: number, seed: number, watch: Watch, done: Done): void;
  values(text: string, done: Done): void;
  remedies(text: string, finding: string, samples: number, seed: number, watch: Watch, done: Done): void;
  window(text: string, done: Done): void;
  compare(from: string, to: string, watch: Watch, done: Done): void;
  heap(): number;
};

/** For how long a run computes before it hears whether it was cancelled, in ms. */
const stretch = 12;

/**
 * When the collector runs: the live part of the heap is small and an assessment leaves ten times as much, so it may grow a good deal, up to what a phone
 * gives a page for good.
 */
const collector = { GOGC: '400', GOMEMLIMIT: '96MiB' };

const running = new Map<number, { stop: boolean }>();
const waiting = new Set<Done>();
let ended = '';

function start(): Promise<Program> {
  return new Promise((resolve, reject) => {
    const go = new Go();
    go.env = collector;
    Object.assign(globalThis, { pitgateCore: resolve });
    const end = (error: unknown): void => {
      ended = error instanceof Error ? error.message : 'the core ended';
      for (const done of waiting) done('broken', ended);
      reject(error instanceof Error ? error : new Error(ended));
    };
    WebAssembly.instantiateStreaming(fetch(address), go.importObject)
      .then(({ instance }) => go.run(instance))
      .then(end, end);
  });
}
const program = start();
// Whoever asks hears of it; nobody needs to before.
program.catch(() => undefined);

/** One turn of the event loop, in which messages are heard. */
const channel = new MessageChannel();
const turns: (() => void)[] = [];
channel.port1.onmessage = () => turns.shift()?.();
function turn(then: () => void): void {
  turns.push(then);
  channel.port2.postMessage(null);
}

/** Lets a run go on at once, or after a turn when it has computed for a stretch. */
function watchOf(run: { stop: boolean }, progress?: Progress): Watch {
  let since = performance.now();
  return (done, total, resume) => {
    if (performance.now() - since < stretch) return true;
    progress?.(done, total);
    turn(() => {
      since = performance.now();
      resume(!run.stop);
    });
    return undefined;
  };
}

/** Asks the program and waits for its one answer. */
async function ask(question: (program: Program, done: Done) => void): Promise<Answer> {
  const core = await program;
  if (ended) return { kind: 'broken', text: ended };
  return new Promise((resolve) => {
    const done: Done = (kind, text) => {
      waiting.delete(done);
      resolve({ kind, text });
    };
    waiting.add(done);
    question(core, done);
  });
}

/** Asks what can be cancelled by its ticket. */
async function watched(
  ticket: number,
  progress: Progress | undefined,
  question: (program: Program, watch: Watch, done: Done) => void,
): Promise<Answer> {
  const run = { stop: false };
  running.set(ticket, run);
  try {
    return await ask((core, done) => {
      question(core, watchOf(run, progress), done);
    });
  } finally {
    running.delete(ticket);
  }
}

const worker: CoreWorker = {
  version: async () => (await program).version,
  report: (ticket, text, progress) =>
    watched(ticket, progress, (core, watch, done) => {
      core.report(text, watch, done);
    }),
  spread: (ticket, text, { samples, seed }: Draw, progress) =>
    watched(ticket, progress, (core, watch, done) => {
      core.spread(text, samples, seed, watch, done);
    }),
  compare: (ticket, from, to) =>
    watched(ticket, undefined, (core, watch, done) => {
      core.compare(from, to, watch, done);
    }),
  values: (text) =>
    ask((core, done) => {
      core.values(text, done);
    }),
  remedies: (ticket, text, { samples, seed }: Draw, progress) =>
    watched(ticket, progress, (core, watch, done) => {
      core.remedies(text, '', samples, seed, watch, done);
    }),
  window: (text) =>
    ask((core, done) => {
      core.window(text, done);
    }),
  cancel(ticket) {
    const run = running.get(ticket);
    if (run) run.stop = true;
  },
  heap: async () => (await program).heap(),
};
expose(worker);
