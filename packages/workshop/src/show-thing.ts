import type { CorrectionId } from '@pullbook/core/air';
import { defaultRecipe } from '@pullbook/core/pull';
import { accepted, type Result } from '@pullbook/core/remark';
import type { Trial } from '@pullbook/core/trial';
import type { Book } from '@pullbook/store';
import {
  type CombinationPage,
  type PullPage,
  type TrialPage,
  trialPage,
  type ViewOptions,
} from '@pullbook/views';
import { combinationPageOf } from './combination-page.ts';
import { type CompareReport, compareReport } from './edge/compare-report.ts';
import { type PullListing, pullListing } from './edge/pull-listing.ts';
import { findOne, type Named } from './find-one.ts';
import { pullPageOf } from './pull-pages.ts';
import { viewsOf } from './pull-views.ts';
import { answerOf, type Looking } from './trial-answer.ts';

/** A thing of the book as a page to print, with its numbers at the edge. Charts are left out: they are for drawing. */
export type ShownThing =
  | { kind: 'trial'; trial: Trial; comparisons: CompareReport[]; page: Omit<TrialPage, 'chart' | 'cursor'> }
  | { kind: 'pull'; pull: PullListing; page: Omit<PullPage, 'chart' | 'recorded' | 'cursor'> }
  | { kind: 'combination'; page: CombinationPage };

export interface ShowOptions extends ViewOptions {
  correction?: CorrectionId | undefined;
}

/** Whatever an id, the beginning of one, or a name stands for: a trial, a pull or a combination. */
export async function showThing(
  book: Book,
  given: string,
  options: ShowOptions,
): Promise<Result<ShownThing>> {
  const trials = await book.trials();
  const kinds: [ShownThing['kind'], Named[]][] = [
    ['trial', trials.map(({ id, question }) => ({ id, name: question }))],
    ['pull', await book.pullHeads()],
    ['combination', await book.combinations()],
  ];
  const things = kinds.flatMap(([kind, named]) => named.map(({ id, name }) => ({ id, name, kind })));
  const found = findOne(things, given, 'thing');
  if (!found.ok) return found;
  const { id, kind } = found.value;
  if (kind === 'trial') return shownTrial(book, trials.find((one) => one.id === id)!, options);
  if (kind === 'pull') return shownPull(book, id, options);
  const page = await combinationPageOf(book, id, options);
  return page.ok ? accepted({ kind, page: page.value }) : page;
}

async function shownTrial(book: Book, trial: Trial, options: ShowOptions): Promise<Result<ShownThing>> {
  const looking: Looking = { correction: options.correction };
  const answer = await answerOf(book, trial, looking);
  const { chart: _chart, cursor: _cursor, ...page } = trialPage(answer, options);
  const { comparison } = answer;
  const views = [...answer.views.values()];
  const comparisons = comparison
    ? comparison.gains.map((gain) => compareReport(comparison, gain.changedKey, views))
    : [];
  return accepted({ kind: 'trial', trial, comparisons, page });
}

async function shownPull(book: Book, id: string, options: ShowOptions): Promise<Result<ShownThing>> {
  const shown = await pullPageOf(book, id, options, options.correction);
  if (!shown.ok) return shown;
  const { chart: _chart, recorded: _recorded, cursor: _cursor, ...page } = shown.value;
  const head = (await book.pullHeads()).find((one) => one.id === id)!;
  const [view] = await viewsOf(book, [head], defaultRecipe(options.correction));
  const combination = head.combinationId === null ? null : await book.combination(head.combinationId);
  return accepted({ kind: 'pull', pull: pullListing(head, view!, combination?.name ?? null), page });
}
