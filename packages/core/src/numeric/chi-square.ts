import { demandPositive, demandProbability } from './demand.ts';
import { gammaPower, incompleteGamma } from './incomplete-gamma.ts';
import { normalQuantile } from './normal.ts';
import { quantileOnLogScale } from './quantile-on-log-scale.ts';

/**
 * Share of the chi-squared distribution below `x`; real `degreesOfFreedom` above 0. 1e-12 relative.
 *
 * @example chiSquareCdf(3.841459, 1) // 0.95
 */
export function chiSquareCdf(x: number, degreesOfFreedom: number): number {
  demandPositive('degrees of freedom', degreesOfFreedom);
  if (x === Number.POSITIVE_INFINITY) return 1;
  return incompleteGamma(degreesOfFreedom / 2, x / 2).lower;
}

/**
 * The value below which the share `p` lies; 1e-10 relative.
 *
 * @example chiSquareQuantile(0.95, 1) // 3.841459
 */
export function chiSquareQuantile(p: number, degreesOfFreedom: number): number {
  demandProbability('share of the chi-squared distribution', p);
  demandPositive('degrees of freedom', degreesOfFreedom);
  return p > 0.5 ? valueUnder(1 - p, degreesOfFreedom) : valueOver(p, degreesOfFreedom);
}

/** The value above which the share `p` lies: for shares so small that 1 - p would lose them. */
export function chiSquareUpperQuantile(p: number, degreesOfFreedom: number): number {
  return p > 0.5 ? valueOver(1 - p, degreesOfFreedom) : valueUnder(p, degreesOfFreedom);
}

/** Has the share `p` below it. */
function valueOver(p: number, df: number): number {
  const at = (x: number) => ({
    probability: incompleteGamma(df / 2, x / 2).lower,
    density: gammaPower(df / 2, x / 2) / x,
  });
  return quantileOnLogScale(at, true, p, startNear(p, normalQuantile(p), df));
}

/** Has the share `p` above it. */
function valueUnder(p: number, df: number): number {
  const at = (x: number) => ({
    probability: incompleteGamma(df / 2, x / 2).upper,
    density: gammaPower(df / 2, x / 2) / x,
  });
  return quantileOnLogScale(at, false, p, startNear(1 - p, -normalQuantile(p), df));
}

/** The cube root is nearly normal (Wilson and Hilferty 1931); where that fails, the first term of the series at 0. */
function startNear(below: number, z: number, df: number): number {
  const part = 2 / (9 * df);
  const root = 1 - part + z * Math.sqrt(part);
  return root > 0.1 ? df * root ** 3 : 2 * (below * (df / 2)) ** (2 / df);
}
