import { continuedFraction } from './continued-fraction.ts';
import { demandPositive } from './demand.ts';
import { logLessChange, stirlingError } from './log-gamma.ts';

/**
 * Regularised incomplete gamma function: the shares of a gamma distribution of shape `a` below and above `x`, each with all
 * its digits. Series and continued fraction of Abramowitz and Stegun 6.5.29 and 6.5.31, from memory.
 *
 * @example incompleteGamma(1, 2).lower // 1 - exp(-2)
 */
export function incompleteGamma(a: number, x: number): { lower: number; upper: number } {
  demandPositive('shape of the gamma distribution', a);
  if (!(x >= 0)) throw new RangeError(`x is ${x}: it must be 0 or more`);
  if (x === 0) return { lower: 0, upper: 1 };
  const power = gammaPower(a, x);
  if (x < a + 1) {
    let term = 1 / a;
    let sum = term;
    for (let k = 1; term > 1e-17 * sum; k++) {
      term *= x / (a + k);
      sum += term;
    }
    const lower = power * sum;
    return { lower, upper: 1 - lower };
  }
  if (power === 0) return { lower: 1, upper: 0 };
  const fraction = continuedFraction(x + 1 - a, (k, pair) => {
    pair.above = -k * (k - a);
    pair.below = x + 2 * k + 1 - a;
  });
  const upper = power / fraction;
  return { lower: 1 - upper, upper };
}

/** x^a exp(-x) over Γ(a), with the large powers taken together before they are raised. */
export function gammaPower(a: number, x: number): number {
  const change = (x - a) / a;
  return Math.sqrt(a / (2 * Math.PI)) * Math.exp(a * logLessChange(x / a, change) - stirlingError(a));
}
