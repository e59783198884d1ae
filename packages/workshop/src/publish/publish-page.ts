import type { PublicationKind } from '@pullbook/core/publication';
import { accepted, type Result } from '@pullbook/core/remark';
import type { Book } from '@pullbook/store';
import { type TrialPage, trialPage, type ViewOptions } from '@pullbook/views';
import type { Leaving, NamedStill, ShownPublication, ShownRunningOrder } from '@pullbook/views/publish';
import { findTrial } from '../find-named.ts';
import { answerWithMatch } from '../match/answer-with-match.ts';
import { signatureOf } from '../signature.ts';
import type { Looking } from '../trial-answer.ts';
import { publishedStem } from './file-names.ts';
import { formatsHere } from './formats-here.ts';
import { publicationsPage } from './publications.ts';

/** Everything that the publish page of a trial shows. */
export interface PublishPage {
  id: string;
  question: string;
  sentence: TrialPage['sentence'];
  /** A page draws them itself: the same drawing as the file's. */
  stills: (NamedStill & { alternative: string })[];
  runningOrder: ShownRunningOrder;
  leaving: Leaving;
  /** What this machine can make, the usual one first. */
  formats: Record<PublicationKind, string[]>;
  publications: ShownPublication[];
  /** What the names of its files begin with. */
  stem: string;
  /** What a change made from it gives back. */
  stamp: string;
}

/** The publish page of one trial; a trial without pulls has no stills in it. */
export async function publishPageOf(
  book: Book,
  trialId: string,
  options: ViewOptions,
  looking: Looking = {},
): Promise<Result<PublishPage>> {
  const found = await findTrial(book, trialId);
  if (!found.ok) return found;
  const { id } = found.value;
  // The stamp before the thing: what is written in between makes a change from this page be asked again, never lost.
  const stamp = await book.stamp(`trial ${id}`);
  const trial = (await book.trial(id)) ?? found.value;
  const answer = await answerWithMatch(book, trial, looking);
  const { leaving, shownRunningOrder, stillSet } = await import('@pullbook/views/publish');
  const stills = answer.comparison ? stillSet(answer, options, await signatureOf(book)) : [];
  const publications = await publicationsPage(book, options, id);
  if (!publications.ok) return publications;
  return accepted({
    id,
    question: trial.question,
    sentence: trialPage(answer, options).sentence,
    stills: stills.map(({ name, key, title, still }) => ({
      name,
      key,
      title,
      still,
      alternative: sentences([still.headline, still.alternative]),
    })),
    runningOrder: shownRunningOrder(answer, options),
    leaving: leaving(answer),
    formats: await formatsHere(),
    publications: publications.value,
    stem: publishedStem(trial.question, id),
    stamp,
  });
}

/** Words one after the other, each with its full stop. */
const sentences = (words: readonly string[]): string =>
  words
    .filter((text) => text !== '')
    .map((text) => (/[.!?…]$/u.test(text) ? text : `${text}.`))
    .join(' ');
