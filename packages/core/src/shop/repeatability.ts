import { studentTQuantile } from '../numeric/index.ts';
import { fitPrior } from '../scatter/fit-prior.ts';
import type { Spread } from '../scatter/index.ts';
import type { Cluster } from './clusters.ts';
import { groupedBy } from './grouped-by.ts';
import type { InductionClass, Repeatability } from './model.ts';

/** Fewer clusters say nothing of how scatter differs between engines and days. */
const CLUSTERS_FOR_A_FIT = 4;

/** A variance below this is what rounding leaves of two copies of one pull, not scatter: (0.01 %)^2. */
const SMALLEST_VARIANCE = 1e-8;

/**
 * How far pulls of one set-up on one day scatter, from clusters of such pulls: moved from the prior by as much as the clusters
 * say. One cluster says no more of others than the prior's degrees of freedom, however many pulls it has, since engines and
 * days differ; so it is clusters that count, and the degrees of freedom never exceed twice their number (or the prior's,
 * where those are more). From four clusters on, how much they differ is taken from them (moments of their log variances).
 *
 * @example pullSpreadFrom(clusters, historyFrom(BUILT_IN_PRIOR, 'injected').pull)
 */
export function pullSpreadFrom(clusters: readonly Cluster[], prior: Spread): Spread {
  const repeated = clusters.filter(({ variance }) => variance !== null);
  if (repeated.length === 0) return prior;
  const variances = repeated.map(({ variance }) => Math.max(variance!, SMALLEST_VARIANCE));
  const degrees = repeated.map(({ degreesOfFreedom }) => degreesOfFreedom);
  const most = Math.max(prior.degreesOfFreedom, 2 * repeated.length);
  const fit = repeated.length >= CLUSTERS_FOR_A_FIT ? fitPrior(variances, degrees) : null;
  const alike = Math.min(fit?.degreesOfFreedom ?? prior.degreesOfFreedom, most);
  // What a cluster says of the shop: its own degrees of freedom, dimmed by how much clusters differ from each other.
  const weights = degrees.map((one) => 1 / (1 / one + 1 / alike));
  const weight = weights.reduce((sum, one) => sum + one, 0);
  const pooled = variances.reduce((sum, one, at) => sum + weights[at]! * one, 0) / weight;
  const before = prior.degreesOfFreedom;
  const share = weight / (before + weight);
  const variance = (1 - share) * prior.sigma ** 2 + share * (fit?.variance ?? pooled);
  return {
    sigma: Math.sqrt(variance),
    degreesOfFreedom: before + share * (alike - before),
    from: weight >= before ? 'shop' : prior.from,
  };
}

/** Repeatability by cell and kind of engine. Clusters of which the kind of engine is not known are left out. */
export function repeatabilityOf(
  clusters: readonly Cluster[],
  priorOf: (induction: InductionClass) => Spread,
): Repeatability[] {
  const kinds = groupedBy(clusters, ({ cell, induction }) =>
    induction === null ? null : `${induction}\n${cell ?? ''}`,
  );
  return kinds.map((alike) => {
    const { cell, induction } = alike[0]!;
    const repeated = alike.filter(({ variance }) => variance !== null);
    const spread = pullSpreadFrom(alike, priorOf(induction!));
    return {
      cell,
      induction: induction!,
      clusters: repeated.length,
      pulls: repeated.reduce((sum, { pulls }) => sum + pulls.length, 0),
      spread,
      twoPullsDiffer: studentTQuantile(0.975, spread.degreesOfFreedom) * Math.SQRT2 * spread.sigma,
      overTime: byMonth(repeated),
    };
  });
}

/** What each month's clusters say alone, for the picture: pooled, without a prior. */
function byMonth(repeated: readonly Cluster[]): Repeatability['overTime'] {
  const months = groupedBy(repeated, ({ day }) => day.slice(0, 7));
  return months
    .map((ofMonth) => {
      const degrees = ofMonth.reduce((sum, one) => sum + one.degreesOfFreedom, 0);
      const squares = ofMonth.reduce((sum, one) => sum + one.degreesOfFreedom * one.variance!, 0);
      return {
        month: ofMonth[0]!.day.slice(0, 7),
        sigma: Math.sqrt(squares / degrees),
        degreesOfFreedom: degrees,
        clusters: ofMonth.length,
      };
    })
    .toSorted((one, other) => one.month.localeCompare(other.month));
}
