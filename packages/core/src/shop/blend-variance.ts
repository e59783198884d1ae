import type { Spread } from '../scatter/index.ts';

/** One look at a variance through noise of which the variance is known. */
export interface VarianceSeen {
  /** Mean square as seen, of `degreesOfFreedom`. */
  square: number;
  degreesOfFreedom: number;
  /** What of it is scatter of something else, on average. */
  nuisance: number;
}

/** Passes after which the weights follow from what came out; a share of a per cent moves after. */
const PASSES = 4;
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
  let { weight, variance } = weighedBy(before, prior, seen);
  if (!(weight > 0)) return prior;
  // Looks at a spread far above the prior's stand out of their noise more than the prior would have it.
  for (let pass = 1; pass < PASSES; pass += 1)
    ({ weight, variance } = weighedBy(Math.max(before, variance), prior, seen));
  return {
    sigma: Math.sqrt(Math.max(variance, SMALLEST_SHARE * before)),
    degreesOfFreedom: Math.min(
      prior.degreesOfFreedom + weight,
      Math.max(prior.degreesOfFreedom, 2 * seen.length),
    ),
    from: weight >= prior.degreesOfFreedom ? 'shop' : prior.from,
  };
}

/** Prior and looks put together, the looks weighed as if the spread were `level`. */
function weighedBy(
  level: number,
  prior: Spread,
  seen: readonly VarianceSeen[],
): { weight: number; variance: number } {
  let weight = 0;
  let sum = prior.degreesOfFreedom * prior.sigma ** 2;
  for (const { degreesOfFreedom, nuisance, square } of seen) {
    const share = level + nuisance > 0 ? level / (level + nuisance) : 0;
    const own = degreesOfFreedom * share ** 2;
    weight += own;
    sum += own * (square - nuisance);
  }
  return { weight, variance: sum / (prior.degreesOfFreedom + weight) };
}
