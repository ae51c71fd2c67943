import { idOf } from '../../../app/api';
import type { RulePackPreview } from '../../../app/wire';

/** What a preview asks of the server. */
export type PreviewApi = {
  begin: () => Promise<RulePackPreview>;
  get: (id: string) => Promise<RulePackPreview>;
  cancel: (id: string) => Promise<RulePackPreview>;
};

/** How often the server is asked how far it is, in milliseconds. */
const pause = 700;

const runs = (p: RulePackPreview | null): boolean => p?.state === 'RULE_PACK_PREVIEW_STATE_RUNNING';

/** A preview that the server computes: it is followed until it ends, and another page finds it again. */
export class PackPreview {
  now = $state.raw<RulePackPreview | null>(null);
  #stopped = false;
  #timer: ReturnType<typeof setTimeout> | undefined;

  constructor(
    private readonly api: PreviewApi,
    private readonly failed: (error: unknown) => void,
    private readonly wait = pause,
  ) {}

  /** True while the server computes. */
  get running(): boolean {
    return runs(this.now);
  }

  /** True once every approval was tried. */
  get done(): boolean {
    return this.now?.state === 'RULE_PACK_PREVIEW_STATE_DONE';
  }

  async begin(): Promise<void> {
    this.#take(await this.api.begin());
  }

  async cancel(): Promise<void> {
    clearTimeout(this.#timer);
    if (this.now) this.#take(await this.api.cancel(idOf(this.now.name)));
  }

  /** Forgets what was found. */
  clear(): void {
    clearTimeout(this.#timer);
    this.now = null;
  }

  /** Follows no more; the server goes on. */
  stop(): void {
    this.#stopped = true;
    clearTimeout(this.#timer);
  }

  #take(newer: RulePackPreview): void {
    this.now = newer;
    if (runs(newer) && !this.#stopped) this.#timer = setTimeout(() => void this.#follow(), this.wait);
  }

  async #follow(): Promise<void> {
    const was = this.now;
    if (!was) return;
    try {
      const newer = await this.api.get(idOf(was.name));
      if (this.now?.name === was.name && this.running) this.#take(newer);
    } catch (error) {
      this.failed(error);
      if (this.now === was) this.#take(was);
    }
  }
}
