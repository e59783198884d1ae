import type { CorrectionId } from '@pullbook/core/air';
import { cellNamed, defaultRecipe, viewPull } from '@pullbook/core/pull';
import { accepted, type Result } from '@pullbook/core/remark';
import type { Book } from '@pullbook/store';
import { type PullPage, pullPage, type ViewOptions } from '@pullbook/views';
import { asOfToday } from './audience.ts';
import { findPull } from './find-named.ts';
import { findingsAboutPull } from './findings.ts';
import { settingsOf } from './settings.ts';
import { shopReadingOf } from './shop-reading.ts';

/** The page of one pull in the correction asked for. `stamp`: what a change made from it gives back. */
export async function pullPageOf(
  book: Book,
  id: string,
  options: ViewOptions,
  correction?: CorrectionId,
): Promise<Result<PullPage & { stamp: string }>> {
  const found = await findPull(book, id);
  if (!found.ok) return found;
  // The stamp before the thing: what is written in between makes a change from this page be asked again, never lost.
  const stamp = await book.stamp(`pull ${found.value.id}`);
  const pull = await book.pull(found.value.id);
  if (!pull) throw new Error(`Pull ${found.value.id} is listed but not there.`);
  const shop = await shopReadingOf(book);
  const asked = correction ?? (await settingsOf(book)).correction;
  const view = viewPull(pull, defaultRecipe(asked), shop);
  const cell = cellNamed(shop.cells, pull.cell);
  const combination = pull.combinationId === null ? null : await book.combination(pull.combinationId);
  const file = pull.fileHash === null ? null : await book.file(pull.fileHash);
  const trials = await book.trialsOf(await book.trialIdsOfPulls([pull.id]));
  const findings = await findingsAboutPull(book, { pull, view, combination });
  const input = { pull: asOfToday(pull), view, combination, file, trials, cell, findings };
  const page = pullPage(input, options);
  return accepted({ ...page, stamp });
}
