import { STILL_SIZES, type StillSizeName } from '@pullbook/charts';
import { accepted, type Result, refused, remark } from '@pullbook/core/remark';
import type { Book } from '@pullbook/store';
import type { ViewOptions } from '@pullbook/views';
import type { PictureName } from '@pullbook/views/publish';
import { publishedNumbers } from '../edge/published-numbers.ts';
import { signatureOf } from '../signature.ts';
import type { Looking } from '../trial-answer.ts';
import { answerToPublish } from './answer-to-publish.ts';
import { drawnStill } from './drawn-still.ts';
import { publishedName, publishedStem } from './file-names.ts';
import type { FormatOf } from './model.ts';

/** Which picture is to be seen, and how. */
export interface StillRequest extends Looking {
  /** Missing: the answer. */
  picture?: PictureName | undefined;
  /** Of which combination; missing: of the whole trial. */
  key?: string | undefined;
  format: FormatOf<'still'>;
  size: StillSizeName;
  theme: 'light' | 'dark';
  /** `false`: transparent, to lay over a film. */
  ground: boolean;
  /** Although it holds what is not for everyone: then it says so itself. */
  privateToo?: boolean | undefined;
}

/** A picture as a file. */
export interface Still {
  bytes: Uint8Array;
  mediaType: string;
  fileName: string;
  width: number;
  height: number;
}

const MEDIA_TYPES = { svg: 'image/svg+xml', png: 'image/png', pdf: 'application/pdf' } as const;

/** One picture of a trial, to look at: nothing is noted. */
export async function stillOf(
  book: Book,
  trialId: string,
  options: ViewOptions,
  request: StillRequest,
): Promise<Result<Still>> {
  const { format, theme, ground, key = null, picture = 'answer' } = request;
  const found = await answerToPublish(book, trialId, request);
  if (!found.ok) return found;
  const answer = found.value;
  const { stillNamed } = await import('@pullbook/views/publish');
  const named = stillNamed(answer, options, await signatureOf(book), picture, key);
  if (named === null) {
    const message = `"${answer.trial.question}" has no picture "${picture}"${key === null ? '' : ` of ${key}`}.`;
    return refused(remark('refusal', 'no-such-picture', message));
  }
  const { width, height } = STILL_SIZES[request.size];
  const size = { width, height, theme, ground };
  const stem = publishedStem(answer.trial.question, answer.trial.id);
  const parts = [picture, key?.toLowerCase() ?? '', `${width}x${height}`, theme, ground ? '' : 'transparent'];
  return accepted({
    bytes: await drawnStill(named.still, size, format, publishedNumbers(answer)),
    mediaType: MEDIA_TYPES[format],
    fileName: publishedName(stem, parts, format),
    width,
    height,
  });
}
