import type { CorrectionId } from '@pullbook/core/air';
import { defaultRecipe } from '@pullbook/core/pull';
import { accepted, type Result } from '@pullbook/core/remark';
import type { Trial } from '@pullbook/core/trial';
import type { Book } from '@pullbook/store';
import {
  type CombinationPage,
  listView,
  type PullPage,
  type TrialPage,
  trialPage,
  type ViewOptions,
} from '@pullbook/views';
import { type ReachPage, reachPage } from '@pullbook/views/reach';
import { combinationPageOf } from './combination-page.ts';
import { type CompareReport, compareReport } from './edge/compare-report.ts';
import { type PullListing, pullListing } from './edge/pull-listing.ts';
import { type EnquiryReport, enquiryReport } from './enquiry/enquiry-report.ts';
import { enquiryOf } from './enquiry/kept-enquiry.ts';
import { findNamed } from './find-named.ts';
import { answerWithMatch } from './match/answer-with-match.ts';
import { pullPageOf } from './pull-pages.ts';
import { viewsOf } from './pull-views.ts';
import { settingsOf } from './settings.ts';
import type { Looking } from './trial-answer.ts';

/** A thing of the book as a page to print, with its numbers at the edge. Charts are left out: they are for drawing. */
export type ShownThing =
  | { kind: 'trial'; trial: Trial; comparisons: CompareReport[]; page: Omit<TrialPage, 'chart' | 'cursor'> }
  | { kind: 'pull'; pull: PullListing; page: Omit<PullPage, 'chart' | 'cursor'> }
  | { kind: 'combination'; page: CombinationPage }
  | { kind: 'enquiry'; enquiry: EnquiryReport; page: ReachPage };

export interface ShowOptions extends ViewOptions {
  correction?: CorrectionId | undefined;
}

/** Whatever an id, the beginning of one, or a name stands for: a trial, a pull, a combination or an enquiry. */
export async function showThing(
  book: Book,
  given: string,
  options: ShowOptions,
): Promise<Result<ShownThing>> {
  const found = await findNamed(book, ['trial', 'pull', 'combination', 'enquiry'], given, 'thing');
  if (!found.ok) return found;
  const { id, kind } = found.value;
  if (kind === 'trial') return shownTrial(book, (await book.trial(id))!, options);
  if (kind === 'pull') return shownPull(book, id, options);
  if (kind === 'enquiry') return shownEnquiry(book, id, options);
  const page = await combinationPageOf(book, id, options);
  return page.ok ? accepted({ kind, page: page.value }) : page;
}

async function shownTrial(book: Book, trial: Trial, options: ShowOptions): Promise<Result<ShownThing>> {
  const looking: Looking = { correction: options.correction };
  const answer = await answerWithMatch(book, trial, looking);
  const { chart: _chart, cursor: _cursor, ...page } = trialPage(answer, options);
  const { comparison } = answer;
  const views = [...answer.views.values()];
  const comparisons = comparison
    ? comparison.gains.map((gain) => compareReport(comparison, gain.changedKey, views))
    : [];
  return accepted({ kind: 'trial', trial, comparisons, page });
}

async function shownEnquiry(book: Book, id: string, options: ShowOptions): Promise<Result<ShownThing>> {
  const found = await enquiryOf(book, id);
  if (!found.ok) return found;
  const kept = found.value;
  const enquiry = enquiryReport(kept.enquiry, kept.remarks);
  return accepted({ kind: 'enquiry', enquiry, page: reachPage({ kept, rungId: null }, options) });
}

async function shownPull(book: Book, id: string, options: ShowOptions): Promise<Result<ShownThing>> {
  const shown = await pullPageOf(book, id, options, options.correction);
  if (!shown.ok) return shown;
  const { chart: _chart, cursor: _cursor, ...page } = shown.value;
  const head = (await book.pullHeadsOf([id]))[0]!;
  const correction = options.correction ?? (await settingsOf(book)).correction;
  const [view] = await viewsOf(book, [head], defaultRecipe(correction));
  const combination = head.combinationId === null ? null : await book.combination(head.combinationId);
  return accepted({
    kind: 'pull',
    pull: pullListing(head, listView(view!), combination?.name ?? null),
    page,
  });
}
