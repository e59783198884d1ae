import { mean } from '../numeric/index.ts';
import type { VarianceSeen } from './blend-variance.ts';
import type { Cluster } from './clusters.ts';
import { groupedBy } from './grouped-by.ts';
import { levelsOver, sharedProfile } from './profile.ts';

/**
 * One combination in several set-ups of one day: what the set-ups' means scatter, and what of it is pulls alone. Only
 * set-ups that were noted count: two that are not named may be one.
 */
export function setUpReturns(
  clusters: readonly Cluster[],
  pullVariance: (cluster: Cluster) => number,
): VarianceSeen[] {
  const ofDay = groupedBy(clusters, (one) =>
    one.setUpId === null ? null : [one.combinationId, one.footing, one.cell, one.day].join('\n'),
  );
  return ofDay.flatMap((setUps) => seenBetween(setUps, (one) => pullVariance(one) / one.pulls.length));
}

/**
 * One combination on several days in one cell, the mean of a day's set-ups each: what the days scatter, and what of it is
 * pulls and set-ups. Where the same set-up was left on the brake there is no scatter of set-ups in it.
 */
export function dayReturns(
  clusters: readonly Cluster[],
  pullVariance: (cluster: Cluster) => number,
  setUpVariance: number,
): VarianceSeen[] {
  const ofCell = groupedBy(clusters, (one) => [one.combinationId, one.footing, one.cell].join('\n'));
  return ofCell.flatMap((all) => {
    const left = new Set(all.map(({ setUpId }) => setUpId));
    const setUp = left.size === 1 && !left.has(null) ? 0 : setUpVariance;
    // One set-up a day: the first, so that every day weighs alike and pulls of one day are not counted twice.
    const days = groupedBy(all, ({ day }) => day).map((ofDay) => ofDay[0]!);
    return seenBetween(days, (one) => setUp + pullVariance(one) / one.pulls.length);
  });
}

/** Scatter of the clusters' levels over the speeds they all share. */
function seenBetween(clusters: readonly Cluster[], nuisance: (cluster: Cluster) => number): VarianceSeen[] {
  if (clusters.length < 2) return [];
  const profiles = clusters.map(({ profile }) => profile);
  const shared = sharedProfile(profiles);
  if (shared === null) return [];
  const levels = levelsOver(profiles, shared);
  const middle = mean(levels);
  const degreesOfFreedom = levels.length - 1;
  const square = levels.reduce((sum, level) => sum + (level - middle) ** 2, 0) / degreesOfFreedom;
  return [{ square, degreesOfFreedom, nuisance: mean(clusters.map(nuisance)) }];
}
