import { demandPositive, demandProbability } from '../numeric/demand.ts';
import { rootInBracket } from '../numeric/root-in-bracket.ts';
import { scaleRule } from '../numeric/scale-rule.ts';
import { studentTQuantile } from '../numeric/student-t.ts';
import { chanceAllInside } from './chance-all-inside.ts';

/** How alike the estimates are whose largest deviation is to be bounded. */
export interface LargestT {
  /** How many. */
  count: number;
  /** Share of each one's variance that all have in common, 0 to 1: an offset of the whole curve. */
  sharedShare: number;
  /** Correlation of what is left between neighbours, 0 or more and below 1; 0: none but the shared part. */
  neighbourCorrelation: number;
  /** Of the standard error, which all share; Infinity: known. */
  degreesOfFreedom: number;
  /** Chance that none is out, such as 0.95. */
  confidence: number;
}

/**
 * How many standard errors hold *all* of `count` estimates at once: the c with P(max |Zi| / S <= c) = confidence, where
 * Zi = √a Z0 + √(1 - a) Xi, X runs along the row with correlation rho between neighbours (autoregressive), and S² = chi²(df) / df.
 * No random numbers; within 0.003. For rho = 0 it is the two-sided many-to-one table of Dunnett (a = 1/2), for a = 0 too the
 * studentized maximum modulus.
 *
 * @example criticalLargestT({ count: 2, sharedShare: 0.5, neighbourCorrelation: 0, degreesOfFreedom: 10, confidence: 0.95 }) // 2.57
 */
export function criticalLargestT({
  count,
  sharedShare,
  neighbourCorrelation,
  degreesOfFreedom,
  confidence,
}: LargestT): number {
  demandPositive('degrees of freedom', degreesOfFreedom, true);
  demandProbability('confidence', confidence);
  const one = studentTQuantile((1 + confidence) / 2, degreesOfFreedom);
  const chance = chanceAllInside(count, sharedShare, neighbourCorrelation);
  if (chance === null) return one;
  const { scales, weights } = scaleRule(degreesOfFreedom);
  const inside = (critical: number): number => {
    let sum = 0;
    for (let i = 0; i < scales.length; i++) sum += weights[i]! * chance(critical * scales[i]!);
    return sum - confidence;
  };
  // The largest of `count` is at least one of them, and at most as far out as if each had its share of the error.
  const high = studentTQuantile(1 - (1 - confidence) / (2 * count), degreesOfFreedom);
  return rootInBracket(inside, { low: one * 0.99, high: high * 1.01 });
}
