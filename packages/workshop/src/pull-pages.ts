import type { CorrectionId } from '@pullbook/core/air';
import { defaultRecipe, viewPull } from '@pullbook/core/pull';
import { accepted, type Result } from '@pullbook/core/remark';
import type { Book } from '@pullbook/store';
import { type PullPage, type PullRow, pullPage, pullRow, type ViewOptions } from '@pullbook/views';
import { findOne } from './find-one.ts';
import { type PullHead, viewsOf } from './pull-views.ts';

/** Rows of pulls for a list, newest first; all of the book's, or those asked for. */
export async function pullRows(
  book: Book,
  options: ViewOptions,
  only?: (head: PullHead) => boolean,
): Promise<PullRow[]> {
  const heads = (await book.pullHeads()).filter(only ?? (() => true));
  const combinations = new Map((await book.combinations()).map((one) => [one.id, one]));
  const views = await viewsOf(book, heads, defaultRecipe());
  return heads.map((pull, index) =>
    pullRow({ pull, view: views[index]! }, combinations.get(pull.combinationId ?? '') ?? null, options),
  );
}

/** The page of one pull in the correction asked for. */
export async function pullPageOf(
  book: Book,
  id: string,
  options: ViewOptions,
  correction?: CorrectionId,
): Promise<Result<PullPage>> {
  const found = findOne(await book.pullHeads(), id, 'pull');
  if (!found.ok) return found;
  const pull = await book.pull(found.value.id);
  if (!pull) throw new Error(`Pull ${found.value.id} is listed but not there.`);
  const view = viewPull(pull, defaultRecipe(correction));
  const combination = pull.combinationId === null ? null : await book.combination(pull.combinationId);
  const file = pull.fileHash === null ? null : await book.file(pull.fileHash);
  const trials = (await book.trials()).filter((trial) => trial.pulls.some((one) => one.pullId === pull.id));
  return accepted(pullPage({ pull, view, combination, file, trials }, options));
}
