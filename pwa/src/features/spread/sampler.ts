import { core } from '../../worker/core.svelte';
import { deviceFirst } from '../../worker/nearest';
import { preview } from '../models/shared/modelApi';
import type { Sampler } from './sampled.svelte';

/** Draws on this device; by the club's server where this device has no core. */
export function samplerFor(club: string): Sampler {
  return (input, draw, signal, progress) =>
    deviceFirst(
      {
        here: (s) => core.spread(input, draw, s, progress),
        there: (s) => preview(club, input, s, draw),
      },
      signal,
    );
}
