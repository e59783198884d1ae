import {
  type Erratum,
  figuresOf,
  type Publication,
  publicationsOf,
  staleFigures,
} from '@pullbook/core/publication';
import { accepted, type Result } from '@pullbook/core/remark';
import type { Book } from '@pullbook/store';
import type { ViewOptions } from '@pullbook/views';
import { type ShownPublication, shownPublication } from '@pullbook/views/publish';
import { findTrial } from '../find-named.ts';
import type { HistoryStep } from '../history.ts';
import { answerOf } from '../trial-answer.ts';

/** All that was published, or what was of one trial, the last first; each with what is no longer so. */
export async function publicationsPage(
  book: Book,
  options: ViewOptions,
  trial: string | null = null,
): Promise<Result<ShownPublication[]>> {
  const found = trial === null ? null : await findTrial(book, trial);
  if (found?.ok === false) return found;
  const publications = await book.publications(found ? [found.value.id] : undefined);
  return accepted(await shown(book, await errataOf(book, publications), options));
}

/** Publications in which something is no longer so among those that rest on these pulls or are of these trials. */
export async function staleAfter(
  book: Book,
  changed: { pullIds?: readonly string[]; trialIds?: readonly string[]; combinationIds?: readonly string[] },
  options: ViewOptions,
): Promise<ShownPublication[]> {
  const { pullIds = [], trialIds = [], combinationIds = [] } = changed;
  const ofCombinations = await book.pullHeadsWith(combinationIds);
  const pulls = [...pullIds, ...ofCombinations.map(({ id }) => id)];
  const inTrials = new Set([...trialIds, ...(await book.trialIdsOfPulls(pulls))]);
  const all = await book.publications();
  const resting = new Set(publicationsOf(all, pulls));
  const asked = all.filter((one) => resting.has(one) || inTrials.has(one.trialId));
  const errata = await errataOf(book, asked);
  return shown(
    book,
    errata.filter(({ stale }) => stale.length > 0),
    options,
  );
}

/** The same after a step of the log was taken, or taken back. */
export async function staleAfterStep(
  book: Book,
  { thing }: Pick<HistoryStep, 'thing'>,
  options: ViewOptions,
): Promise<ShownPublication[]> {
  if (thing === null) return [];
  const ids = [thing.id];
  if (thing.kind === 'trial') return staleAfter(book, { trialIds: ids }, options);
  return staleAfter(book, thing.kind === 'pull' ? { pullIds: ids } : { combinationIds: ids }, options);
}

/** Each beside what its trial gives today by the standard it was published in. */
export async function errataOf(book: Book, publications: readonly Publication[]): Promise<Erratum[]> {
  const errata: Erratum[] = [];
  for (const publication of publications) {
    const trial = await book.trial(publication.trialId);
    const answer = trial && (await answerOf(book, trial, { correction: publication.correction }));
    errata.push({ publication, stale: staleFigures(publication, answer && figuresOf(answer)) });
  }
  return errata;
}

async function shown(
  book: Book,
  errata: readonly Erratum[],
  options: ViewOptions,
): Promise<ShownPublication[]> {
  const ids = [...new Set(errata.flatMap(({ publication }) => publication.pullIds))];
  const names = new Map((await book.pullHeadsOf(ids)).map(({ id, name }) => [id, name]));
  return errata.map((erratum) => shownPublication(erratum, names, options));
}
