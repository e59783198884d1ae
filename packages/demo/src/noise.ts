import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';

/** A stream of random numbers of its own for each named thing, so that one more pull does not shift the others. */
export interface Noise {
  /** Mean 0, standard deviation 1. */
  normal(): number;
}

/**
 * The stream for one named thing. The normal deviate is the sum of twelve uniform ones less six: additions alone, so
 * that every machine makes the same bytes; its tails end at six deviations, which is no loss here.
 */
export function noiseFor(seed: number, name: string): Noise {
  const generator = xoroshiro128plus(mixed(seed, name));
  return {
    normal() {
      let sum = -6;
      for (let index = 0; index < 12; index += 1) sum += uniformFloat64(generator);
      return sum;
    },
  };
}

/**
 * Noise that remembers: each value keeps `memory` of the one before it (0: none, near 1: long), with standard
 * deviation 1.
 */
export function rememberingNoise(noise: Noise, memory: number): () => number {
  const fresh = Math.sqrt(1 - memory * memory);
  let value = noise.normal();
  return () => {
    value = memory * value + fresh * noise.normal();
    return value;
  };
}

/** FNV-1a over the name, started from the seed. */
function mixed(seed: number, name: string): number {
  let hash = (0x811c9dc5 ^ seed) >>> 0;
  for (let index = 0; index < name.length; index += 1) {
    hash = Math.imul(hash ^ name.charCodeAt(index), 0x01000193) >>> 0;
  }
  return hash | 0;
}
