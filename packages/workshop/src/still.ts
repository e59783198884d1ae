import { accepted, type Result, refused, remark } from '@pullbook/core/remark';
import type { Book } from '@pullbook/store';
import { heldBack, stillDescription, type ViewOptions } from '@pullbook/views';
import { findTrial } from './find-named.ts';
import { signatureOf } from './signature.ts';
import { answerOf, type Looking } from './trial-answer.ts';

export interface StillRequest extends Looking {
  format: 'svg' | 'png';
  size: '1080p' | '4k';
  theme: 'light' | 'dark';
  /** `false`: transparent, to lay over a film. */
  ground: boolean;
  /** Although it holds what is not for everyone: then it says so itself. */
  privateToo?: boolean | undefined;
}

export interface Still {
  bytes: Uint8Array;
  mediaType: 'image/svg+xml' | 'image/png';
  fileName: string;
  width: number;
  height: number;
}

/** The still of a trial. Drawing is loaded only when it is asked for: the rest of the program starts without it. */
export async function stillOf(
  book: Book,
  trialId: string,
  options: ViewOptions,
  request: StillRequest,
): Promise<Result<Still>> {
  const found = await findTrial(book, trialId);
  if (!found.ok) return found;
  const answer = await answerOf(book, found.value, request);
  if (!answer.comparison) {
    return refused(
      remark(
        'refusal',
        'nothing-to-publish',
        `"${found.value.question}" has no counted pull with a curve yet, so there is no picture to publish. Add pulls to the trial first.`,
      ),
    );
  }
  const held = heldBack(answer);
  if (held.length > 0 && request.privateToo !== true) return refused(notForEveryone(held));
  const { STILL_SIZES, stillFileName, stillPng, stillSvg } = await import('@pullbook/publish');
  const { width, height } = STILL_SIZES[request.size];
  const size = { width, height, theme: request.theme, ground: request.ground };
  const description = stillDescription(answer, options, await signatureOf(book));
  const bytes =
    request.format === 'png'
      ? stillPng(description, size)
      : new TextEncoder().encode(stillSvg(description, size));
  return accepted({
    bytes,
    mediaType: request.format === 'png' ? 'image/png' : 'image/svg+xml',
    fileName: stillFileName(found.value.question, size, request.format),
    width,
    height,
  });
}

const notForEveryone = (held: string[]) =>
  remark(
    'refusal',
    'not-for-everyone',
    `This still would leave the shop with what is not for everyone: ${held.join(' ')} Open it first, or ask for it all the same (--private-too, or the tick on the page): it then says "Not for publication" itself.`,
  );
