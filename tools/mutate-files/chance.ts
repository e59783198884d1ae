import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';

/** Chance by seed: the same seed gives the same run on every machine. */
export interface Chance {
  /** 0 to below 1. */
  share(): number;
  /** Both ends included. */
  whole(low: number, high: number): number;
  oneOf<T>(list: readonly [T, ...T[]] | readonly T[]): T;
}

/** The first numbers of this generator are nearly the same for seeds that are near one another. */
const PASSED_OVER = 64;

export function chanceOf(seed: number): Chance {
  const generator = xoroshiro128plus(seed);
  for (let number = 0; number < PASSED_OVER; number++) uniformFloat64(generator);
  const share = () => uniformFloat64(generator);
  const whole = (low: number, high: number) => low + Math.floor(share() * (high - low + 1));
  return { share, whole, oneOf: (list) => list[whole(0, list.length - 1)]! };
}
