import { chiSquareCdf, chiSquareQuantile, chiSquareUpperQuantile } from './chi-square.ts';
import { demandPositive, demandProbability } from './demand.ts';
import { betaPower, incompleteBeta } from './incomplete-beta.ts';
import { incompleteGamma } from './incomplete-gamma.ts';
import { normalQuantile } from './normal.ts';
import { quantileOnLogScale } from './quantile-on-log-scale.ts';

const ENDLESS = Number.POSITIVE_INFINITY;
/** A variance with so many degrees of freedom is known, to the last digits that are promised. */
const KNOWN_FROM = 1e12;
const orKnown = (degreesOfFreedom: number): number =>
  degreesOfFreedom >= KNOWN_FROM ? ENDLESS : degreesOfFreedom;

/**
 * Share of the F distribution below `x`: degrees of freedom of the variance above the line and of that under it;
 * real, above 0, either may be Infinity (a variance that is known). 1e-12 relative. The share above x is fCdf(1 / x, below, above).
 *
 * @example fCdf(4.964603, 1, 10) // 0.95
 */
export function fCdf(x: number, degreesAbove: number, degreesBelow: number): number {
  demandPositive('degrees of freedom above', degreesAbove, true);
  demandPositive('degrees of freedom below', degreesBelow, true);
  const [above, below] = [orKnown(degreesAbove), orKnown(degreesBelow)];
  if (!(x >= 0)) throw new RangeError(`ratio of variances is ${x}: it must be 0 or more`);
  if (x === 0) return 0;
  if (x === ENDLESS) return 1;
  if (above === ENDLESS && below === ENDLESS) return x < 1 ? 0 : 1;
  if (below === ENDLESS) return chiSquareCdf(above * x, above);
  if (above === ENDLESS) return incompleteGamma(below / 2, below / x / 2).upper;
  const ratio = (above / below) * x;
  return incompleteBeta(above / 2, below / 2, 1 / (1 + 1 / ratio), 1 / (1 + ratio));
}

/**
 * The ratio below which the share `p` lies; 1e-10 relative.
 *
 * @example fQuantile(0.95, 1, 10) // 4.964603
 */
export function fQuantile(p: number, degreesAbove: number, degreesBelow: number): number {
  demandProbability('share of the F distribution', p);
  demandPositive('degrees of freedom above', degreesAbove, true);
  demandPositive('degrees of freedom below', degreesBelow, true);
  const [above, below] = [orKnown(degreesAbove), orKnown(degreesBelow)];
  if (above === ENDLESS && below === ENDLESS) return 1;
  if (below === ENDLESS) return chiSquareQuantile(p, above) / above;
  if (above === ENDLESS) return below / chiSquareUpperQuantile(p, below);
  const upper = p > 0.5;
  return quantileOnLogScale(
    (x) => {
      const ratio = (above / below) * x;
      const low = 1 / (1 + 1 / ratio);
      const high = 1 / (1 + ratio);
      const density = betaPower(above / 2, below / 2, low, high) / x;
      return upper
        ? { probability: incompleteBeta(below / 2, above / 2, high, low), density }
        : { probability: incompleteBeta(above / 2, below / 2, low, high), density };
    },
    !upper,
    upper ? 1 - p : p,
    // The logarithm of F is roughly normal, more so the more degrees of freedom there are.
    Math.exp(normalQuantile(p) * Math.sqrt(2 / above + 2 / below)),
  );
}
