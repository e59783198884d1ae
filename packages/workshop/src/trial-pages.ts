import { accepted, type Result } from '@pullbook/core/remark';
import type { Book } from '@pullbook/store';
import { type TrialCard, type TrialPage, trialCard, trialPage, type ViewOptions } from '@pullbook/views';
import { findTrial } from './find-named.ts';
import { answerBeforeMatch, answerWithMatch } from './match/answer-with-match.ts';
import { type ListPage, wordsIn } from './search-pulls.ts';
import { answerOf, type Looking } from './trial-answer.ts';

/** Cards a page: each is worked out from its pulls when it is first looked at. */
export const CARDS_A_PAGE = 20;

/** Which trials: words that must all stand in question, remark or hardware; page from 1. */
export interface TrialSearch {
  find?: string | undefined;
  page?: number | undefined;
  size?: number | undefined;
}

/** A page of cards of trials, the one added last first. Only those on the page are worked out. */
export async function trialCards(
  book: Book,
  options: ViewOptions,
  { find, page = 1, size = CARDS_A_PAGE }: TrialSearch = {},
): Promise<ListPage<TrialCard>> {
  const words = wordsIn(find);
  const all = await book.trialNames();
  const fitting = all.filter((one) => words.every((word) => one.words.includes(word)));
  const ids = fitting.slice((page - 1) * size, page * size).map(({ id }) => id);
  const trials = new Map((await book.trialsOf(ids)).map((trial) => [trial.id, trial]));
  const rows: TrialCard[] = [];
  for (const trial of ids.flatMap((id) => trials.get(id) ?? [])) {
    rows.push(trialCard(await answerOf(book, trial), options));
  }
  const pages = Math.max(1, Math.ceil(fitting.length / size));
  return { rows, total: fitting.length, all: all.length, page, pages };
}

/** A trial's page as it leaves the workshop. */
interface StampedTrialPage extends TrialPage {
  /** What a change made from it gives back. */
  stamp: string;
  /** `false`: what rests on a supercharger match is still left out. */
  isWhole: boolean;
}

/** The page of one trial; `early`: without waiting for a supercharger match that its reasons rest on. */
export async function trialPageOf(
  book: Book,
  id: string,
  options: ViewOptions,
  looking: Looking = {},
  { early = false } = {},
): Promise<Result<StampedTrialPage>> {
  const trial = await findTrial(book, id);
  if (!trial.ok) return trial;
  // The stamp before the thing: what is written in between makes a change from this page be asked again, never lost.
  const stamp = await book.stamp(`trial ${trial.value.id}`);
  const latest = (await book.trial(trial.value.id)) ?? trial.value;
  const { answer, isWhole } = early
    ? await answerBeforeMatch(book, latest, looking)
    : { answer: await answerWithMatch(book, latest, looking), isWhole: true };
  return accepted({ ...trialPage(answer, options), stamp, isWhole });
}
