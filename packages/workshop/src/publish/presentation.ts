import { accepted, type Result } from '@pullbook/core/remark';
import type { Book } from '@pullbook/store';
import type { ViewOptions } from '@pullbook/views';
import { type PresentedStep, presentation } from '@pullbook/views/publish';
import { findTrial } from '../find-named.ts';
import { answerWithMatch } from '../match/answer-with-match.ts';
import { signatureOf } from '../signature.ts';
import type { Looking } from '../trial-answer.ts';

/** A trial step by step to stand beside: it stays in the room, so that nothing of it is held back. */
export async function presentationOf(
  book: Book,
  trialId: string,
  options: ViewOptions,
  looking: Looking = {},
): Promise<Result<{ question: string; steps: PresentedStep[] }>> {
  const found = await findTrial(book, trialId);
  if (!found.ok) return found;
  const answer = await answerWithMatch(book, found.value, looking);
  const { steps } = presentation(answer, options, await signatureOf(book));
  return accepted({ question: answer.trial.question, steps });
}
