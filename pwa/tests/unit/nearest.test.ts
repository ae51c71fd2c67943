import { beforeEach, describe, expect, it, vi } from 'vitest';
import { Problem } from '../../src/app/problem';
import type { Answer, CoreWorker, Draw, Progress } from '../../src/worker/answer';
import { Core, CoreBroken, type Start } from '../../src/worker/core.svelte';
import { deviceFirst, nearest } from '../../src/worker/nearest';

const offline = new Problem(0, 'no connection', '');
const never = new AbortController().signal;
const answerOf = (text: string): Answer => ({ kind: 'answer', text });

/** A worker whose reports the test answers. */
class Bench {
  answers: Answer[] = [];
  started = 0;
  ended = 0;
  cancelled: number[] = [];
  broken = false;
  asked: number[] = [];
  draws: Draw[] = [];
  /** Documents whose values were asked for, and what they wait for. */
  valued: string[] = [];
  gate = Promise.resolve();
  readonly start = (async () => {
    this.started++;
    if (this.broken) throw new Error('no such file');
    return {
      worker: {
        version: async () => '1.2.3',
        report: async (ticket: number, _text: string, progress?: Progress) => {
          this.asked.push(ticket);
          await progress?.(1, 2);
          return this.answers.shift() ?? answerOf('{}');
        },
        spread: async (ticket: number, _text: string, draw: Draw, progress?: Progress) => {
          this.asked.push(ticket);
          this.draws.push(draw);
          await progress?.(1, 2);
          return this.answers.shift() ?? answerOf('{}');
        },
        compare: async (ticket: number, from: string, to: string) => {
          this.asked.push(ticket);
          return answerOf(JSON.stringify({ coreVersion: from + to }));
        },
        values: async (text: string) => {
          this.valued.push(text);
          await this.gate;
          return this.answers.shift() ?? answerOf('{}');
        },
        remedies: async () => answerOf('{"remedies":[]}'),
        window: () => new Promise<Answer>(() => undefined),
        cancel: async (ticket: number) => {
          this.cancelled.push(ticket);
        },
        heap: async () => 1,
      } satisfies Record<keyof CoreWorker, unknown>,
      end: () => {
        this.ended++;
      },
    };
  }) as unknown as Start;
}

let bench: Bench;
let core: Core;
beforeEach(() => {
  bench = new Bench();
  core = new Core(bench.start);
});

const question = (there: () => Promise<{ findings: [] }>) => ({
  here: () => core.report({}, never),
  there,
});
const served = (): Promise<{ findings: [] }> => Promise.resolve({ findings: [] });
const unreached = (): Promise<never> => Promise.reject(offline);

describe('who answers', () => {
  it('is the server while the core loads, then the device', async () => {
    expect((await nearest(core, question(served), never)).place).toBe('server');
    await core.load();
    expect(core.version).toBe('1.2.3');
    expect((await nearest(core, question(served), never)).place).toBe('device');
    expect(bench.started).toBe(1);
  });

  it('is the device, waited for, when no server is reached', async () => {
    bench.answers = [answerOf('{"coreVersion":"1.2.3"}')];
    const { answer, place } = await nearest(core, question(unreached), never);
    expect([place, answer]).toEqual(['device', { coreVersion: '1.2.3' }]);
  });

  it('is nobody when the core does not start either: the missing connection is told', async () => {
    bench.broken = true;
    await expect(nearest(core, question(unreached), never)).rejects.toBe(offline);
    expect(core.version).toBe('');
  });

  it('is the server when the core breaks, and a new core afterwards', async () => {
    await core.load();
    bench.answers = [{ kind: 'broken', text: 'out of memory' }];
    expect((await nearest(core, question(served), never)).place).toBe('server');
    expect(bench.ended).toBe(1);
    await core.load();
    expect(bench.started).toBe(2);
  });
});

describe('the core of the device', () => {
  it('refuses in the words of the server, field by field', async () => {
    const body = {
      code: 'INVALID_ARGUMENT',
      reason: 'INVALID_DOCUMENT',
      message: 'the document has faults',
      fieldViolations: [{ field: 'model.name', description: 'is required' }],
    };
    bench.answers = [{ kind: 'refused', text: JSON.stringify(body) }];
    const refused = await core.report({}, never).catch((e: unknown) => e);
    expect(refused).toBeInstanceOf(Problem);
    expect((refused as Problem).fields).toEqual([{ field: 'model.name', description: 'is required' }]);
    expect((refused as Problem).status).toBe(400);
  });

  it('is asked of two documents at once, the first one first', async () => {
    const from = { model: { displayName: 'Dabchick' } };
    const answer = await core.compare(from, {}, never);
    expect(answer.coreVersion).toBe(JSON.stringify(from) + '{}');
  });

  it('gives values before the report', async () => {
    bench.answers = [answerOf('{"findings":[]}')];
    expect(await core.values({}, never)).toEqual({ findings: [] });
  });

  it('leaves out values that were cancelled while others were computed', async () => {
    let open = (): void => undefined;
    bench.gate = new Promise((resolve) => (open = resolve));
    const named = (displayName: string) => ({ model: { displayName } });
    const stop = new AbortController();
    const first = core.values(named('4'), stop.signal);
    const second = core.values(named('4.'), stop.signal);
    await vi.waitFor(() => {
      expect(bench.valued).toHaveLength(1);
    });
    stop.abort();
    const third = core.values(named('4.2'), never);
    open();
    await expect(first).rejects.toHaveProperty('name', 'AbortError');
    await expect(second).rejects.toHaveProperty('name', 'AbortError');
    expect(await third).toEqual({});
    expect(bench.valued).toEqual([named('4'), named('4.2')].map((doc) => JSON.stringify(doc)));
  });

  it('hears of a cancel and ends without an answer', async () => {
    const stop = new AbortController();
    bench.answers = [{ kind: 'stopped', text: '' }];
    const asked = core.report({}, stop.signal, () => {
      stop.abort();
    });
    await expect(asked).rejects.toHaveProperty('name', 'AbortError');
    expect(bench.cancelled).toEqual(bench.asked);
  });

  it('ends its worker for a cancelled window, which has no place to stop', async () => {
    const stop = new AbortController();
    await core.load();
    const asked = core.window({}, stop.signal);
    setTimeout(() => {
      stop.abort();
    }, 5);
    await expect(asked).rejects.toHaveProperty('name', 'AbortError');
    expect([bench.ended, core.version]).toEqual([1, '']);
  });

  it('says why it is broken', async () => {
    bench.answers = [{ kind: 'broken', text: 'out of memory' }];
    await expect(core.report({}, never)).rejects.toThrow(CoreBroken);
  });
});

describe('a long run', () => {
  const draw = { samples: 64, seed: 7 };
  const long = (there: () => Promise<object>, signal = never, progress?: Progress) =>
    deviceFirst({ here: () => core.spread({}, draw, signal, progress), there }, signal);

  it('waits for the device and asks no server', async () => {
    const { place } = await long(unreached);
    expect([place, bench.draws]).toEqual(['device', [draw]]);
  });

  it('goes to the server when there is no core here, or it breaks', async () => {
    bench.broken = true;
    expect((await long(served)).place).toBe('server');
    bench.broken = false;
    bench.answers = [{ kind: 'broken', text: 'out of memory' }];
    expect((await long(served)).place).toBe('server');
  });

  it('looks for remedies when they are asked for', async () => {
    const report = await core.spread({}, { ...draw, remedies: true }, never);
    expect(report.remedies).toEqual([]);
    expect(bench.draws).toEqual([]);
  });

  it('goes nowhere once it is cancelled', async () => {
    const stop = new AbortController();
    bench.answers = [{ kind: 'stopped', text: '' }];
    let asked = false;
    const run = long(
      () => {
        asked = true;
        return served();
      },
      stop.signal,
      () => {
        stop.abort();
      },
    );
    await expect(run).rejects.toHaveProperty('name', 'AbortError');
    expect([asked, bench.cancelled]).toEqual([false, bench.asked]);
  });

  it('is refused in words, and not asked again elsewhere', async () => {
    bench.answers = [{ kind: 'refused', text: '{"message":"the document has faults"}' }];
    await expect(long(served)).rejects.toThrow('the document has faults');
  });
});
