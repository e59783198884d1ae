import type { ScatterHistory, Spread } from '../scatter/index.ts';
import type { InductionClass, ScatterPrior } from './model.ts';
import type { OwnPrior } from './own-prior.ts';

/**
 * What is known of the scatter before any pull of the shop speaks: a prior for one kind of engine. Of an engine whose sheet
 * does not say how it is fed the wider of the two without a supercharger is taken.
 *
 * @param own  what of the prior the shop said itself: its figures are marked so
 * @example historyFrom(BUILT_IN_PRIOR, 'injected').pull.sigma // 0.004
 */
export function historyFrom(
  prior: ScatterPrior,
  induction: InductionClass | null,
  own: OwnPrior = {},
): ScatterHistory {
  const kind = induction ?? (prior.pull.injected > prior.pull.carburetted ? 'injected' : 'carburetted');
  const known = prior.degreesOfFreedom;
  const spread = (sigma: number, degreesOfFreedom: number, said: number | undefined): Spread => ({
    sigma,
    degreesOfFreedom,
    from: said === undefined ? 'built-in' : 'setting',
  });
  return {
    pull: spread(prior.pull[kind], known.pull, own.pull?.[kind]),
    setUp: spread(prior.setUp, known.setUp, own.setUp),
    day: spread(prior.day, known.day, own.day),
    cell: spread(prior.cell, known.cell, own.cell),
    within: { ...spread(prior.within, known.within, own.within), lengthRpm: prior.withinLengthRpm },
    driftPerHour: spread(prior.driftPerHour, known.drift, own.driftPerHour),
  };
}
