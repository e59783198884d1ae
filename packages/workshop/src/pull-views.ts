import {
  defaultRecipe,
  type Pull,
  type PullView,
  type PullViewer,
  type Recipe,
  type ShopReading,
  SILENT_SHOP,
  viewPull,
} from '@pullbook/core/pull';
import type { Book } from '@pullbook/store';
import { remembered, rememberedNow } from './remembered.ts';
import { shopKey, shopReadingOf } from './shop-reading.ts';

export type PullHead = Omit<Pull, 'channels'>;

/** Views of many pulls by one recipe, each computed once: a list then costs its curves only the first time. */
export async function viewsOf(
  book: Book,
  heads: PullHead[],
  recipe: Recipe = defaultRecipe(),
): Promise<PullView[]> {
  const shop = await shopReadingOf(book);
  const views: PullView[] = [];
  for (const head of heads) {
    const key = viewKey(head, recipe, shop);
    views.push(
      await remembered(book, key, async () => viewPull(await wholePull(book, head.id), recipe, shop)),
    );
  }
  return views;
}

/** Views pulls that are at hand, each by each recipe once. */
export const viewerOf =
  (book: Book): PullViewer =>
  (pull, recipe, shop = SILENT_SHOP) =>
    rememberedNow(book, viewKey(pull, recipe, shop), () => viewPull(pull, recipe, shop));

const viewKey = (head: PullHead, recipe: Recipe, shop: ShopReading): string =>
  JSON.stringify(['view', recipe, shopKey(head, shop), { ...head, channels: undefined }]);

async function wholePull(book: Book, id: string): Promise<Pull> {
  const pull = await book.pull(id);
  if (!pull) throw new Error(`Pull ${id} is listed but not there.`);
  return pull;
}
