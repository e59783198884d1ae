import { BUILT_IN_PRIOR } from './built-in-prior.ts';
import type { InductionClass, ScatterPrior } from './model.ts';

/** What a shop says of its scatter itself; what is left out stands as built in. */
export interface OwnPrior extends Partial<Omit<ScatterPrior, 'pull' | 'degreesOfFreedom'>> {
  pull?: Partial<Record<InductionClass, number>>;
  degreesOfFreedom?: Partial<ScatterPrior['degreesOfFreedom']>;
}

/** The guess before any pull speaks, and what of it the shop said. */
export interface PriorInForce {
  prior: ScatterPrior;
  own: OwnPrior;
}

/**
 * The built-in guess with the shop's own figures in their places.
 *
 * @example priorInForce({ setUp: 0.003 }).prior.setUp // 0.003
 */
export function priorInForce(own: OwnPrior = {}): PriorInForce {
  const prior = {
    ...BUILT_IN_PRIOR,
    ...own,
    pull: { ...BUILT_IN_PRIOR.pull, ...own.pull },
    degreesOfFreedom: { ...BUILT_IN_PRIOR.degreesOfFreedom, ...own.degreesOfFreedom },
  };
  return { prior, own };
}
