import { onDestroy } from 'svelte';
import { clockText } from '../../../app/dates';
import { session } from '../../../app/session.svelte';
import { report as trouble } from '../../../app/trouble.svelte';
import { words } from '../../../app/words';
import { dropDraft, keepDraft, loadDraft } from './draftStore';
import { redo, startTrail, step, undo, type Trail } from './trail';

const w = words.form;

/** What is typed in one form: kept on this device after every change, with undo and redo. */
export class Typing<D> {
  trail: Trail<D> = $state.raw() as Trail<D>;
  /** Says when it was kept last. */
  kept = $state(w.unsaved);
  restored = $state(false);
  #timer: ReturnType<typeof setTimeout> | undefined;

  constructor(
    private readonly key: string,
    private start: D,
    private readonly changed: (now: D) => void,
  ) {
    this.trail = startTrail(start);
  }

  get now(): D {
    return this.trail.now;
  }

  /** Takes up what this device kept. */
  async open(): Promise<void> {
    const found = await loadDraft<D>(this.key);
    if (found) {
      this.trail = step(this.trail, found.draft, '');
      this.restored = true;
      this.kept = w.saved(clockText(found.time));
    }
    this.changed(this.now);
  }

  /** A change; changes at the same place one after another are one step to take back. */
  put(next: D, place: string): void {
    this.#become(step(this.trail, next, place));
  }

  undo(): void {
    this.#become(undo(this.trail));
  }

  redo(): void {
    this.#become(redo(this.trail));
  }

  /** Takes back or does again by the usual keys, which in a box belong to the box. */
  readonly shortcut = (event: KeyboardEvent): void => {
    if ((event.target as HTMLElement).matches('input, textarea')) return;
    const key = event.key.toLowerCase();
    if (!(event.ctrlKey || event.metaKey) || (key !== 'z' && key !== 'y')) return;
    event.preventDefault();
    if (key === 'z' && !event.shiftKey) this.undo();
    else this.redo();
  };

  #become(trail: Trail<D>): void {
    this.trail = trail;
    this.kept = w.saving;
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => void this.save(), 250);
    this.changed(trail.now);
  }

  async save(): Promise<void> {
    clearTimeout(this.#timer);
    try {
      const time = await keepDraft(this.key, this.now);
      this.kept = w.saved(clockText(time));
    } catch {
      this.kept = w.saveFailed;
    }
  }

  /** Deletes what this device kept; a device that keeps nothing has nothing to delete. */
  async drop(): Promise<void> {
    clearTimeout(this.#timer);
    await dropDraft(this.key).catch(() => undefined);
  }

  /** What was typed has reached the server: the form begins anew from there. */
  async restart(start: D): Promise<void> {
    this.start = start;
    await this.discard();
  }

  /** Goes back to the beginning. */
  async discard(): Promise<void> {
    await this.drop();
    this.trail = startTrail(this.start);
    this.restored = false;
    this.kept = w.unsaved;
    this.changed(this.now);
  }

  /** The page is left: what waits to be kept is kept at once. */
  close(): void {
    if (this.kept === w.saving) void this.save();
  }
}

/** What the person signed in types in the form that is made just now, under a name of that form; it takes up what this device kept. */
export function typingHere<D>(
  keep: string,
  start: D,
  changed: (now: D) => void = () => undefined,
): Typing<D> {
  const typing = new Typing(`${session.person?.name ?? ''}|${keep}`, start, changed);
  void typing.open().catch(trouble);
  onDestroy(() => {
    typing.close();
  });
  return typing;
}
