import { groupedBy } from './grouped-by.ts';
import type { InductionClass, PullDigest } from './model.ts';
import { levelsOver, type Profile, profileOf, sharedProfile } from './profile.ts';
import { slopeThrough } from './slope-through.ts';

/** Pulls of one combination in one set-up on one day in one cell, run alike: what differs between them is scatter. */
export interface Cluster {
  engineId: string | null;
  combinationId: string;
  setUpId: string | null;
  sessionId: string | null;
  day: string;
  cell: string | null;
  induction: InductionClass | null;
  footing: string;
  /** In the order in which they were made. */
  pulls: { pullId: string; hours: number | null; level: number }[];
  /** Mean logarithm of power at the speeds all its pulls share. */
  profile: Profile;
  /** Of the pulls' mean logarithm of power, about a straight trend where there are four or more; `null`: one pull. */
  variance: number | null;
  degreesOfFreedom: number;
}

/** Pulls from which a straight trend is taken out before they are called scatter. */
const PULLS_FOR_A_TREND = 4;

/**
 * Pulls that may be counted as repeats of each other, together. A pull without a combination or a day stands in none;
 * pulls that share no speed at all are no cluster.
 */
export function clustersOf(digests: readonly PullDigest[]): Cluster[] {
  const together = groupedBy(
    digests.filter((one) => one.counts && one.combinationId !== null && one.day !== null),
    (one) => [one.combinationId, one.setUpId, one.day, one.cell, one.footing].join('\n'),
  );
  return together.flatMap((members) => {
    const cluster = clusterOf(members);
    return cluster === null ? [] : [cluster];
  });
}

function clusterOf(members: readonly PullDigest[]): Cluster | null {
  const ordered = members.toSorted((one, other) => (one.hours ?? 0) - (other.hours ?? 0));
  const profiles = ordered.map(profileOf);
  const profile = sharedProfile(profiles);
  if (profile === null) return null;
  const levels = levelsOver(profiles, profile);
  const first = ordered[0]!;
  const pulls = ordered.map(({ pullId, hours }, at) => ({ pullId, hours, level: levels[at]! }));
  return {
    engineId: first.engineId,
    combinationId: first.combinationId!,
    setUpId: first.setUpId,
    sessionId: first.sessionId,
    day: first.day!,
    cell: first.cell,
    induction: first.induction,
    footing: first.footing,
    pulls,
    profile,
    ...scatterOf(pulls),
  };
}

function scatterOf(pulls: Cluster['pulls']): Pick<Cluster, 'variance' | 'degreesOfFreedom'> {
  if (pulls.length < 2) return { variance: null, degreesOfFreedom: 0 };
  const isTimed = pulls.every(({ hours }) => hours !== null) && pulls[0]!.hours !== pulls.at(-1)!.hours;
  const withTrend = pulls.length >= PULLS_FOR_A_TREND;
  const { residualSquares } = slopeThrough([
    pulls.map(({ hours, level }, at) => ({ x: withTrend ? (isTimed ? hours! : at) : 0, y: level })),
  ]);
  const degreesOfFreedom = pulls.length - (withTrend ? 2 : 1);
  return { variance: residualSquares / degreesOfFreedom, degreesOfFreedom };
}
