import { demandPositive } from '../numeric/demand.ts';
import { fQuantile } from '../numeric/f-distribution.ts';
import type { Spread, SpreadUsed } from './model.ts';

/** Above this share of the F distribution repeats contradict history. */
const CONTRADICTED_ABOVE = 0.75;
/**
 * Degrees of freedom that repeats standing alone have at least, one difference as well as two or three, unless they and history
 * have fewer together. Student's t of one and two degrees, 12.7 and 4.3, would make every fourth A-B-B-A or 2 + 2 worthless while
 * history is right; and a size told by one difference is not known as well as the history that it contradicts. By simulation with
 * histories of 6, 20 and 200 degrees (2,500 to 3,000 runs each): where history is right all limits from 2 to 6 hold 96 to 98 of
 * 100. Where pulls scatter twice as stated, A-B-B-A holds 82 with history's degrees (at 200), 84.0, 84.7 and 85.1 with 6, 4 and
 * 3; and 2 + 2 pulls hold 89.8, 89.3 and 88.8 with 2, 3 and 4 at mean half-widths of 1.27, 1.10 and 1.04 % while history is right.
 */
const FEWEST_ALONE = 3;

const MOST_REMEMBERED = 500;
const remembered = new Map<string, number>();

/**
 * Ratio of the repeats' variance over history's above which history is set aside, by the degrees of freedom of both.
 * Remembered, since a plan asks for the same few thousands of times.
 */
export function contradictedFrom(repeats: number, history: number): number {
  const key = `${repeats} ${history}`;
  const known = remembered.get(key);
  if (known !== undefined) return known;
  if (remembered.size >= MOST_REMEMBERED) remembered.clear();
  const limit = fQuantile(CONTRADICTED_ABOVE, repeats, history);
  remembered.set(key, limit);
  return limit;
}

/**
 * A spread from history and repeats together: variances weighted by their degrees of freedom, which add up (moderated
 * variance of Smyth 2004, equation 3, from memory). Repeats whose variance over history's is above the 75 % point of F set
 * history aside: then they stand alone, with three degrees of freedom where they are fewer. Less scatter than
 * history's never does, for so a few repeats often look by luck. A history of 0 says "there is none of this" and stays.
 *
 * @example 0.4 % of 20 degrees of freedom and repeats of 0.5 % of 2 give 0.41 % of 22
 */
export function moderate(
  history: Spread,
  repeats: { sigma: number; degreesOfFreedom: number } | null,
): SpreadUsed {
  const { sigma, degreesOfFreedom, from } = history;
  if (!(sigma >= 0)) throw new RangeError(`sigma of history is ${sigma}: it must be 0 or more`);
  demandPositive('degrees of freedom of history', degreesOfFreedom, true);
  const asHistory = { sigma, degreesOfFreedom, fromRepeats: repeats, historySetAside: false, from };
  if (repeats === null) return asHistory;
  if (!(repeats.sigma >= 0))
    throw new RangeError(`sigma of repeats is ${repeats.sigma}: it must be 0 or more`);
  demandPositive('degrees of freedom of repeats', repeats.degreesOfFreedom);
  if (sigma === 0) return asHistory;
  const ratio = (repeats.sigma / sigma) ** 2;
  const together = degreesOfFreedom + repeats.degreesOfFreedom;
  if (ratio > contradictedFrom(repeats.degreesOfFreedom, degreesOfFreedom))
    return {
      ...asHistory,
      sigma: repeats.sigma,
      degreesOfFreedom: Math.max(repeats.degreesOfFreedom, Math.min(together, FEWEST_ALONE)),
      historySetAside: true,
    };
  if (degreesOfFreedom === Number.POSITIVE_INFINITY) return asHistory;
  const shrunk = (degreesOfFreedom + repeats.degreesOfFreedom * ratio) / together;
  return { ...asHistory, sigma: sigma * Math.sqrt(shrunk), degreesOfFreedom: together };
}
