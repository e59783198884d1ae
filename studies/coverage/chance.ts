import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';

/** One stream of random numbers. The study's own: nothing of it comes from the program under study. */
export interface Chance {
  /** Mean 0, standard deviation 1. */
  normal(): number;
  /** Student's t with 4 degrees of freedom, scaled to standard deviation 1: one value in a hundred beyond 2.65. */
  heavyTailed(): number;
  /** Sum of so many squared normal deviates; real `degreesOfFreedom` > 0. */
  chiSquare(degreesOfFreedom: number): number;
  /** From 0 up to 1. */
  uniform(): number;
}

/** The stream of one named stretch of work, the same on every machine that rounds logarithms alike. */
export function chanceFor(seed: number, name: string): Chance {
  const generator = xoroshiro128plus(mixed(seed, name));
  const uniform = () => uniformFloat64(generator);
  let kept: number | null = null;
  // Marsaglia's polar method: two deviates at a time.
  const normal = (): number => {
    if (kept !== null) {
      const value = kept;
      kept = null;
      return value;
    }
    for (;;) {
      const [x, y] = [2 * uniform() - 1, 2 * uniform() - 1];
      const square = x * x + y * y;
      if (square === 0 || square >= 1) continue;
      const scale = Math.sqrt((-2 * Math.log(square)) / square);
      kept = y * scale;
      return x * scale;
    }
  };
  const chiSquare = (degreesOfFreedom: number) => 2 * gamma(degreesOfFreedom / 2, normal, uniform);
  return {
    normal,
    uniform,
    chiSquare,
    // The variance of t with 4 degrees of freedom is 2.
    heavyTailed: () => normal() / Math.sqrt(chiSquare(4) / 4) / Math.SQRT2,
  };
}

/** Marsaglia and Tsang (2000), with the usual lift for shapes below 1. */
function gamma(shape: number, normal: () => number, uniform: () => number): number {
  if (shape < 1) return gamma(shape + 1, normal, uniform) * uniform() ** (1 / shape);
  const d = shape - 1 / 3;
  const c = 1 / Math.sqrt(9 * d);
  for (;;) {
    const x = normal();
    const v = (1 + c * x) ** 3;
    if (v > 0 && Math.log(1 - uniform()) < 0.5 * x * x + d - d * v + d * Math.log(v)) return d * v;
  }
}

/** FNV-1a over the name, started from the seed. */
function mixed(seed: number, name: string): number {
  let hash = (0x811c9dc5 ^ seed) >>> 0;
  for (let index = 0; index < name.length; index += 1)
    hash = Math.imul(hash ^ name.charCodeAt(index), 0x01000193) >>> 0;
  return hash | 0;
}
