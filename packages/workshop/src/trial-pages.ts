import { accepted, type Result } from '@pullbook/core/remark';
import type { Book } from '@pullbook/store';
import { type TrialCard, type TrialPage, trialCard, trialPage, type ViewOptions } from '@pullbook/views';
import { answerOf, type Looking, trialBy } from './trial-answer.ts';

/** Cards of all trials, newest first. */
export async function trialCards(book: Book, options: ViewOptions): Promise<TrialCard[]> {
  const trials = (await book.trials()).sort((a, b) => b.createdAt.localeCompare(a.createdAt));
  const cards: TrialCard[] = [];
  for (const trial of trials) cards.push(trialCard(await answerOf(book, trial), options));
  return cards;
}

/** The page of one trial. */
export async function trialPageOf(
  book: Book,
  id: string,
  options: ViewOptions,
  looking: Looking = {},
): Promise<Result<TrialPage>> {
  const trial = await trialBy(book, id);
  if (!trial.ok) return trial;
  return accepted(trialPage(await answerOf(book, trial.value, looking), options));
}
