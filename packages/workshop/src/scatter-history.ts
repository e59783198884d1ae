import type { CombinationSheet } from '@pullbook/core/combination';
import { type Remark, remark } from '@pullbook/core/remark';
import type { ScatterHistory } from '@pullbook/core/scatter';
import { type Cluster, clustersOf, historyOfShop, inductionOf, priorInForce } from '@pullbook/core/shop';
import type { Book } from '@pullbook/store';
import { shopDigestsOf } from './pull-digests.ts';
import { rememberedNow } from './remembered.ts';
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
  const [cell = null, ...others] = new Set(cells);
  const asked = { cell: others.length === 0 ? cell : null, inductions: sheets.map(inductionOf) };
  // A window that is moved asks for the same again, out of all clusters of the shop.
  const key = JSON.stringify(['scatter history', shop.stamp, scatterPrior, asked, without]);
  return rememberedNow(book, key, () => {
    const clusters = without.length === 0 ? shop.clusters : withoutPulls(shop, new Set(without));
    return historyOfShop(clusters, priorInForce(scatterPrior ?? {}), asked);
  });
}

/** Says that the shop's pulls are still being read, where they are: the band can then still change. */
export async function historyBeingRead(book: Book): Promise<Remark[]> {
  const { digests, unread } = await shopDigestsOf(book);
  if (unread === 0) return [];
  return [
    remark(
      'note',
      'history-being-read',
      `How far this shop's pulls scatter is taken from the ${digests.length} read so far; ${unread} more are being read. Bands and verdicts can still change: look again when that is done.`,
    ),
  ];
}

/** Clusters without some pulls: only those in which one stands are made anew. */
function withoutPulls(
  { digests, clusters }: Awaited<ReturnType<typeof shopDigestsOf>>,
  without: ReadonlySet<string>,
): Cluster[] {
  const isTouched = ({ pulls }: Cluster) => pulls.some(({ pullId }) => without.has(pullId));
  const [touched, untouched] = [clusters.filter(isTouched), clusters.filter((one) => !isTouched(one))];
  const left = new Set(touched.flatMap(({ pulls }) => pulls.map(({ pullId }) => pullId)));
  for (const pullId of without) left.delete(pullId);
  return [...untouched, ...clustersOf(digests.filter(({ pullId }) => left.has(pullId)))];
}
