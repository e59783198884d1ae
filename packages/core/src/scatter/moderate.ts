import { demandPositive } from '../numeric/demand.ts';
import { fQuantile } from '../numeric/f-distribution.ts';
import type { Spread, SpreadUsed } from './model.ts';

/** Above this share of the F distribution repeats contradict history. */
const CONTRADICTED_ABOVE = 0.75;
/**
 * A single difference gives its size but cannot stand alone: Student's t of one degree is 12.7, which would make every fourth
 * A-B-B-A worthless while history is right (mean half-width 8.7 instead of 3.0 standard deviations at 1 + 2 pulls), for 86 %
 * instead of 83 % held where history is wrong by half.
 */
const FEWEST_ALONE = 2;

/**
 * A spread from history and repeats together: variances weighted by their degrees of freedom, which add up (moderated
 * variance of Smyth 2004, equation 3, from memory). Repeats whose variance over history's is above the 75 % point of F set
 * history aside: then they stand alone, a single difference with history's degrees of freedom. Less scatter
 * than history's never does, for so a few repeats often look by luck. A history of 0 says "there is none of this" and stays.
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
  if (ratio > fQuantile(CONTRADICTED_ABOVE, repeats.degreesOfFreedom, degreesOfFreedom))
    return {
      ...asHistory,
      sigma: repeats.sigma,
      degreesOfFreedom: repeats.degreesOfFreedom < FEWEST_ALONE ? together : repeats.degreesOfFreedom,
      historySetAside: true,
    };
  if (degreesOfFreedom === Number.POSITIVE_INFINITY) return asHistory;
  const shrunk = (degreesOfFreedom + repeats.degreesOfFreedom * ratio) / together;
  return { ...asHistory, sigma: sigma * Math.sqrt(shrunk), degreesOfFreedom: together };
}
