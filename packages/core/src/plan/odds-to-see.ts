import { noncentralTCdf, rootInBracket } from '../numeric/index.ts';

/** How a gain will be judged: its error, how well that is known, and the half-width of the band over the error. */
export interface Judged {
  /** Of the logarithm of the gain. */
  standardError: number;
  degreesOfFreedom: number;
  critical: number;
}

/**
 * Chance that a gain of this size comes out clear: that |t| is above the critical value where t is noncentral, with the gain
 * over its standard error as its noncentrality (Johnson, Kotz and Balakrishnan, Continuous Univariate Distributions, ch. 31).
 *
 * @example oddsToSee(Math.log(1.02), { standardError: 0.005, degreesOfFreedom: Infinity, critical: 1.96 }) // 0.98
 */
export function oddsToSee(logGain: number, { standardError, degreesOfFreedom, critical }: Judged): number {
  if (standardError === 0) return logGain === 0 ? 0 : 1;
  return oddsAt(Math.abs(logGain) / standardError, degreesOfFreedom, critical);
}

function oddsAt(shift: number, degreesOfFreedom: number, critical: number): number {
  return (
    1 - noncentralTCdf(critical, degreesOfFreedom, shift) + noncentralTCdf(-critical, degreesOfFreedom, shift)
  );
}

/** Beyond this many standard errors nothing is planned: spreads known so badly can show nothing. */
const MOST_ERRORS = 500;

/**
 * Smallest gain, as a share of the baseline, that comes out clear with these odds; Infinity where spreads are known so badly
 * that none does.
 */
export function smallestDifference(odds: number, judged: Judged): number {
  const { standardError, degreesOfFreedom, critical } = judged;
  if (standardError === 0) return 0;
  const shift = rootInBracket((at) => oddsAt(at, degreesOfFreedom, critical) - odds, {
    low: 0,
    high: Math.min(MOST_ERRORS, Math.max(10, 20 * critical)),
  });
  return Number.isNaN(shift) ? Number.POSITIVE_INFINITY : Math.expm1(shift * standardError);
}
