import type { Cluster } from './clusters.ts';
import { historyFrom } from './history-from.ts';
import { sharedSpreadsOf } from './history-of-shop.ts';
import type { ShopFigures } from './model.ts';
import type { PriorInForce } from './own-prior.ts';
import { repeatabilityOf } from './repeatability.ts';
import { sentinelOf } from './sentinel.ts';

/**
 * Everything the shop's pulls say about its own scatter, each figure moved from the guess by as much as they say.
 *
 * @example shopFigures(clustersOf(digests), priorInForce()).repeatability[0]?.spread.sigma
 */
export function shopFigures(clusters: readonly Cluster[], inForce: PriorInForce): ShopFigures {
  const { drift, ...shared } = sharedSpreadsOf(clusters, inForce);
  return {
    repeatability: repeatabilityOf(
      clusters,
      (induction) => historyFrom(inForce.prior, induction, inForce.own).pull,
    ),
    ...shared,
    drift: {
      ...drift,
      sessions: drift.sessions.map(({ clusters: own, ...session }) => ({
        ...session,
        sentinel: sentinelOf(own),
      })),
    },
  };
}
