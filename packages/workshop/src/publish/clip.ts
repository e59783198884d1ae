import { type ClipDescription, clipSeconds } from '@pullbook/charts';
import { accepted, type Result } from '@pullbook/core/remark';
import type { TrialAnswer } from '@pullbook/core/trial';
import type { Book } from '@pullbook/store';
import type { Signature, ViewOptions } from '@pullbook/views';
import { clipDescription } from '@pullbook/views/publish';
import { signatureOf } from '../signature.ts';
import type { Looking } from '../trial-answer.ts';
import { answerToPublish } from './answer-to-publish.ts';

/** The clip of a trial as a description, for a page that draws it itself: nothing is noted. */
export async function clipOf(
  book: Book,
  trialId: string,
  options: ViewOptions,
  request: Looking & { privateToo?: boolean | undefined },
): Promise<Result<ClipDescription>> {
  const found = await answerToPublish(book, trialId, request, ['clip']);
  return found.ok ? accepted(clipDescription(found.value, options, await signatureOf(book))) : found;
}

/** The clip as its running order has it, at another speed, or as long as is asked for (s). */
export function timedClip(
  answer: TrialAnswer,
  options: ViewOptions,
  signature: Signature,
  { speed, seconds }: { speed: number | null; seconds: number | null },
): ClipDescription {
  const clip = clipDescription(answer, options, signature);
  const own = answer.trial.runningOrder?.speed ?? 1;
  const faster = seconds === null ? (speed ?? own) / own : clipSeconds(clip) / seconds;
  return { ...clip, steps: clip.steps.map((step) => ({ ...step, seconds: step.seconds / faster })) };
}
