import type { CorrectionId } from '@pullbook/core/air';
import type { ViewedPull } from '@pullbook/core/airpath';
import { defaultRecipe } from '@pullbook/core/pull';
import type { Book, PullHead } from '@pullbook/store';
import { viewerOf } from '../pull-views.ts';
import { shopReadingOf } from '../shop-reading.ts';

/** Pulls with their curves, as observed in their own air unless a standard is asked for; each view is worked out once while the book is open. */
export async function viewedPulls(
  book: Book,
  heads: readonly PullHead[],
  correction: CorrectionId = 'observed',
): Promise<ViewedPull[]> {
  const viewed = viewerOf(book);
  const shop = await shopReadingOf(book);
  const recipe = defaultRecipe(correction);
  const pulls = new Map((await book.pulls(heads.map(({ id }) => id))).map((pull) => [pull.id, pull]));
  return heads.map(({ id }) => {
    const pull = pulls.get(id)!;
    return { pull, view: viewed(pull, recipe, shop) };
  });
}
