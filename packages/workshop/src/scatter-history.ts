import type { CombinationSheet } from '@pullbook/core/combination';
import type { ScatterHistory } from '@pullbook/core/scatter';
import { type Cluster, clustersOf, historyOfShop, inductionOf, priorInForce } from '@pullbook/core/shop';
import type { Book } from '@pullbook/store';
import { shopDigestsOf } from './pull-digests.ts';
import { settingsOf } from './settings.ts';

/** Which comparison the scatter is wanted for. */
export interface ScatterAsked {
  /** Cells its pulls name: one is asked for alone, several are not. */
  cells: readonly (string | null)[];
  /** What is built into the engines compared. */
  sheets: readonly CombinationSheet[];
  /** Pulls of the comparison itself: they are its data and must not be its prior too. */
  without: readonly string[];
}

/**
 * What is known of the scatter before the pulls at hand: the shop's own pulls where they say something, by as much as they
 * say, else its settings, else what is built in.
 */
export async function scatterHistoryOf(
  book: Book,
  { cells, sheets, without }: ScatterAsked,
): Promise<ScatterHistory> {
  const { scatterPrior } = await settingsOf(book);
  const shop = await shopDigestsOf(book);
  const clusters = without.length === 0 ? shop.clusters : withoutPulls(shop, new Set(without));
  const [cell = null, ...others] = new Set(cells);
  return historyOfShop(clusters, priorInForce(scatterPrior ?? {}), {
    cell: others.length === 0 ? cell : null,
    inductions: sheets.map(inductionOf),
  });
}

/** Clusters without some pulls: only those in which one stands are made anew. */
function withoutPulls(
  { digests, clusters }: Awaited<ReturnType<typeof shopDigestsOf>>,
  without: ReadonlySet<string>,
): Cluster[] {
  const touched = clusters.filter(({ pulls }) => pulls.some(({ pullId }) => without.has(pullId)));
  const left = new Set(touched.flatMap(({ pulls }) => pulls.map(({ pullId }) => pullId)));
  for (const pullId of without) left.delete(pullId);
  const untouched = clusters.filter((one) => !touched.includes(one));
  return [...untouched, ...clustersOf(digests.filter(({ pullId }) => left.has(pullId)))];
}
