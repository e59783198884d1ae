import type { Spread } from '../scatter/index.ts';

/** One look at a variance through noise of which the variance is known. */
export interface VarianceSeen {
  /** Mean square as seen, of `degreesOfFreedom`. */
  square: number;
  degreesOfFreedom: number;
  /** What of it is scatter of something else, on average. */
  nuisance: number;
}

/** A variance below this share of the prior's is not believed of few looks: nobody's scatter is nothing. */
const SMALLEST_SHARE = 0.01;

/**
 * A prior spread moved by what was seen. A look whose own noise drowns the spread weighs accordingly little: its degrees of
 * freedom times the square of the spread's share in what is seen (Satterthwaite 1946, method of moments). Degrees of freedom
 * never exceed twice the number of looks, or the prior's where those are more; `from` is the shop once its pulls weigh as
 * much as the prior.
 *
 * @example blendVariance(prior, []) // the prior
 */
export function blendVariance(prior: Spread, seen: readonly VarianceSeen[]): Spread {
  const before = prior.sigma ** 2;
  const weighed = seen.map((one) => ({
    weight: one.degreesOfFreedom * (before / (before + one.nuisance)) ** 2,
    excess: one.square - one.nuisance,
  }));
  const weight = weighed.reduce((sum, one) => sum + one.weight, 0);
  if (!(weight > 0)) return prior;
  const seenSum = weighed.reduce((sum, one) => sum + one.weight * one.excess, 0);
  const variance = (prior.degreesOfFreedom * before + seenSum) / (prior.degreesOfFreedom + weight);
  return {
    sigma: Math.sqrt(Math.max(variance, SMALLEST_SHARE * before)),
    degreesOfFreedom: Math.min(
      prior.degreesOfFreedom + weight,
      Math.max(prior.degreesOfFreedom, 2 * seen.length),
    ),
    from: weight >= prior.degreesOfFreedom ? 'shop' : prior.from,
  };
}
