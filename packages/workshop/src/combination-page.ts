import { accepted, type Result } from '@pullbook/core/remark';
import { combinationToYaml } from '@pullbook/formats';
import type { Book } from '@pullbook/store';
import { type CombinationPage, combinationPage, type ViewOptions } from '@pullbook/views';
import { findOne } from './find-one.ts';
import { pullRows } from './pull-pages.ts';

/** The page of one combination: its sheet, what was derived, what changed, its pulls. */
export async function combinationPageOf(
  book: Book,
  id: string,
  options: ViewOptions,
): Promise<Result<CombinationPage>> {
  const combinations = await book.combinations();
  const found = findOne(combinations, id, 'combination');
  if (!found.ok) return found;
  const combination = found.value;
  const engine = (await book.engines()).find((one) => one.id === combination.engineId);
  if (!engine) throw new Error(`Combination ${combination.id} has no engine in the book.`);
  const madeFrom = combinations.find((one) => one.id === combination.madeFromId) ?? null;
  const packages = (await book.packages()).filter((one) => combination.packageIds.includes(one.id));
  const pulls = await pullRows(book, options, (head) => head.combinationId === combination.id);
  const sheetText = combinationToYaml(combination.sheet);
  return accepted(combinationPage({ combination, engine, madeFrom, packages, pulls, sheetText }, options));
}
