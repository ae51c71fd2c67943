import type { Model } from '../../../app/wire';
import type { Draft } from './draft';
import { keepModel } from './modelApi';

/** The part of a model that a draft rests on. */
export function known(model: Model): NonNullable<Draft['model']> {
  return { name: model.name ?? '', etag: model.etag ?? '' };
}

/** Keeps the model of one visit's draft. A second try after a half-done first one goes on from what was kept. */
export class Keeper {
  #latest: Draft['model'];

  constructor(private readonly club: string) {}

  /** Keeps the model and answers its resource name. */
  async keep(draft: Draft): Promise<string> {
    const rests = this.#latest ?? draft.model;
    const model = await keepModel(this.club, rests ? { ...draft, model: rests } : draft);
    this.#latest = known(model);
    return this.#latest.name;
  }

  /** The draft was put on the server's newer version. */
  rebase(model: Model): NonNullable<Draft['model']> {
    this.#latest = undefined;
    return known(model);
  }
}
