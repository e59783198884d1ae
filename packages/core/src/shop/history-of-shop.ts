import type { ScatterHistory } from '../scatter/index.ts';
import { blendVariance } from './blend-variance.ts';
import { cellOffsetsOf, cellsSeen } from './cell-offsets.ts';
import type { Cluster } from './clusters.ts';
import { driftSeen, slopesOfSessions } from './drift-of-sessions.ts';
import { historyFrom } from './history-from.ts';
import type { InductionClass } from './model.ts';
import type { PriorInForce } from './own-prior.ts';
import { pullSpreadFrom } from './repeatability.ts';
import { dayReturns, setUpReturns } from './returns.ts';

/** Fewer clusters of a cell do not speak for it: those of all cells are taken together. */
const CLUSTERS_FOR_A_CELL = 4;

/** What the shop's clusters say of every spread but that of pulls, with the looks it rests on. */
export function sharedSpreadsOf(clusters: readonly Cluster[], { prior, own }: PriorInForce) {
  const guess = historyFrom(prior, null, own);
  const pullVariance = pullVariances(clusters, { prior, own });
  const setUps = setUpReturns(clusters, pullVariance);
  const setUp = blendVariance(guess.setUp, setUps);
  const days = dayReturns(clusters, pullVariance, setUp.sigma ** 2);
  const day = blendVariance(guess.day, days);
  const sessions = slopesOfSessions(clusters, pullVariance);
  const cellOffsets = cellOffsetsOf(clusters, { setUp, day }, pullVariance);
  return {
    setUp: { returns: returnsIn(setUps), spread: setUp },
    day: { returns: returnsIn(days), spread: day },
    cell: { pairs: cellOffsets.length, spread: blendVariance(guess.cell, cellsSeen(cellOffsets)) },
    drift: { sessions, spread: blendVariance(guess.driftPerHour, driftSeen(sessions)) },
    cellOffsets: cellOffsets.map(({ logVariance: _, ...offset }) => offset),
  };
}

/** What the scatter is wanted of. */
export interface HistoryAsked {
  /** As the pulls name it; `null`: unknown, or several. */
  cell: string | null;
  /** Kinds of the engines compared; `null`: a sheet that does not say. */
  inductions: readonly (InductionClass | null)[];
}

/**
 * What is known of the scatter of such engines in one cell before the pulls at hand: the shop's own pulls where they say
 * something, by as much as they say, else the guess. With few clusters of that cell those of all cells are taken; of
 * several kinds of engine the one that scatters most holds for all.
 *
 * @example historyOfShop(clustersOf(digests), priorInForce(), { cell: 'Cell 1', inductions: ['injected'] })
 */
export function historyOfShop(
  clusters: readonly Cluster[],
  inForce: PriorInForce,
  { cell: asked, inductions }: HistoryAsked,
): ScatterHistory {
  const kinds = inductions.length === 0 ? [null] : [...new Set(inductions)];
  const pulls = kinds.map((kind) => {
    const alike = clusters.filter(({ induction }) => induction === kind);
    const ofCell = alike.filter(({ cell, variance }) => variance !== null && cell === asked);
    const guess = historyFrom(inForce.prior, kind, inForce.own).pull;
    return pullSpreadFrom(ofCell.length >= CLUSTERS_FOR_A_CELL ? ofCell : alike, guess);
  });
  const { setUp, day, cell, drift } = sharedSpreadsOf(clusters, inForce);
  return {
    pull: pulls.reduce((widest, one) => (one.sigma > widest.sigma ? one : widest)),
    setUp: setUp.spread,
    day: day.spread,
    cell: cell.spread,
    within: historyFrom(inForce.prior, null, inForce.own).within,
    driftPerHour: drift.spread,
  };
}

const returnsIn = (seen: readonly { degreesOfFreedom: number }[]): number =>
  seen.reduce((sum, one) => sum + one.degreesOfFreedom, 0);

/** Variance of one pull of a cluster's kind of engine, as the shop knows it. */
function pullVariances(
  clusters: readonly Cluster[],
  { prior, own }: PriorInForce,
): (cluster: Cluster) => number {
  const known = new Map<InductionClass | null, number>();
  return ({ induction }) => {
    const variance =
      known.get(induction) ??
      pullSpreadFrom(
        clusters.filter((one) => one.induction === induction),
        historyFrom(prior, induction, own).pull,
      ).sigma ** 2;
    known.set(induction, variance);
    return variance;
  };
}
