import type { Book } from '@pullbook/store';
import { trialPage } from '@pullbook/views';
import { shownRunningOrder, stillSet } from '@pullbook/views/publish';
import { publishedStem } from './publish/file-names.ts';
import { publicationsPage } from './publish/publications.ts';
import { signatureOf } from './signature.ts';
import { answerOf } from './trial-answer.ts';

const OPTIONS = { units: 'us', decimalMark: '.' } as const;

/**
 * Works a trial out and shows all of it once, for nobody to see: throws where something that came from elsewhere has another
 * shape than the program gives it. In a book it would stand in the way of every list that it is in.
 */
export async function showWhole(book: Book, trialId: string): Promise<void> {
  const trial = await book.trial(trialId);
  if (trial === null) throw new Error(`trial ${trialId} is not there`);
  const answer = await answerOf(book, trial);
  trialPage(answer, OPTIONS);
  shownRunningOrder(answer, OPTIONS);
  publishedStem(trial.question, trial.id);
  if (answer.comparison) stillSet(answer, OPTIONS, await signatureOf(book));
  await publicationsPage(book, OPTIONS, trialId);
}
