import { dotted } from '../../../app/paths';
import { Problem, type FieldFault } from '../../../app/problem';
import { report as trouble } from '../../../app/trouble.svelte';
import type { FieldDescription, FieldRemark } from '../../../app/wire';
import { checkField } from './fieldApi';

const pause = 350;

/** A remark with its path as the form writes it. */
export type Remark = { path: string; part: string; text: string; fault: boolean };

const plain = (r: FieldRemark): Remark => ({
  path: dotted(r.path ?? ''),
  part: r.part ?? '',
  text: r.text ?? '',
  fault: r.fault ?? false,
});

/** The remarks that follow what is typed: the latest question wins, older ones are cancelled. */
export class FieldCheck {
  remarks: Remark[] = $state.raw([]);
  state: 'idle' | 'checking' | 'fresh' | 'old' | 'offline' = $state('idle');
  #timer: ReturnType<typeof setTimeout> | undefined;
  #running: AbortController | undefined;

  constructor(private readonly club: string) {}

  /** Asks again once typing pauses. */
  ask(description: FieldDescription): void {
    this.stop();
    if (this.state === 'fresh') this.state = 'old';
    this.#timer = setTimeout(() => void this.#run(description), pause);
  }

  stop(): void {
    clearTimeout(this.#timer);
    this.#running?.abort();
  }

  /** Faults by field, for the boxes. */
  get faults(): FieldFault[] {
    return this.remarks.filter((r) => r.fault).map((r) => ({ field: r.path, description: r.text }));
  }

  async #run(description: FieldDescription): Promise<void> {
    const running = new AbortController();
    this.#running = running;
    this.state = 'checking';
    try {
      this.remarks = (await checkField(this.club, description, running.signal)).map(plain);
      this.state = 'fresh';
    } catch (error) {
      if (running.signal.aborted) return;
      this.state = error instanceof Problem && error.isOffline ? 'offline' : 'old';
      if (this.state === 'old') trouble(error);
    }
  }
}
