import { accepted, type Result } from '@pullbook/core/remark';
import { combinationToYaml } from '@pullbook/formats';
import type { Book } from '@pullbook/store';
import { type CombinationPage, combinationPage, type ViewOptions } from '@pullbook/views';
import { findNamed } from './find-named.ts';
import { findingsAboutCombination } from './findings.ts';
import { searchPulls } from './search-pulls.ts';

/** Pulls shown on a combination's page; the list of pulls finds the others. */
const MOST_PULLS = 200;

/** The page of one combination: its sheet, what was derived, what changed, its pulls. */
export async function combinationPageOf(
  book: Book,
  id: string,
  options: ViewOptions,
): Promise<Result<CombinationPage & { stamp: string }>> {
  const found = await findNamed(book, ['combination'], id, 'combination');
  if (!found.ok) return found;
  // The stamp before the thing: what is written in between makes a change from this page be asked again, never lost.
  const stamp = await book.stamp(`combination ${found.value.id}`);
  const combination = await book.combination(found.value.id);
  if (!combination) throw new Error(`Combination ${found.value.id} was found but is not there.`);
  const engine = (await book.engines()).find((one) => one.id === combination.engineId);
  if (!engine) throw new Error(`Combination ${combination.id} has no engine in the book.`);
  const madeFrom = combination.madeFromId === null ? null : await book.combination(combination.madeFromId);
  const packages = (await book.packages()).filter((one) => combination.packageIds.includes(one.id));
  const search = { combination: [combination.id], size: MOST_PULLS };
  const pulls = await searchPulls(book, search, options);
  if (!pulls.ok) return pulls;
  const sheetText = combinationToYaml(combination.sheet);
  const findings = await findingsAboutCombination(book, combination);
  const mapId = await idOfMap(book, combination.sheet.sections.supercharger?.map?.text);
  const input = {
    combination,
    engine,
    madeFrom,
    packages,
    pulls: pulls.value.rows,
    sheetText,
    findings,
    mapId,
  };
  return accepted({ ...combinationPage(input, options), stamp });
}

async function idOfMap(book: Book, named: string | undefined): Promise<string | undefined> {
  if (named === undefined) return undefined;
  const called = (name: string) => name.trim().toLowerCase();
  return (await book.compressorMaps()).find(({ name }) => called(name) === called(named))?.id;
}
