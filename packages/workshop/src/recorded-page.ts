import { accepted, type Result, refused, remark } from '@pullbook/core/remark';
import type { Book } from '@pullbook/store';
import {
  MOST_PANELS,
  type RecordedLook,
  type RecordedPage,
  recordedChannels,
  recordedPage,
  type ViewOptions,
} from '@pullbook/views';
import { findPull } from './find-named.ts';
import { viewsOf } from './pull-views.ts';

/** A pull's channels as recorded, no finer than a screen shows. */
export async function recordedPageOf(
  book: Book,
  id: string,
  look: RecordedLook,
  options: ViewOptions,
): Promise<Result<RecordedPage>> {
  const found = await findPull(book, id);
  if (!found.ok) return found;
  const pull = await book.pull(found.value.id);
  if (!pull) throw new Error(`Pull ${found.value.id} is listed but not there.`);
  const known = recordedChannels(pull, look.over).map((one) => one.id);
  const fault = channelsFault(look, known);
  if (fault !== null) return refused(remark('refusal', 'recorded-channels', fault));
  const [view] = await viewsOf(book, [found.value]);
  return accepted(recordedPage(pull, view!, look, options));
}

function channelsFault({ channels, over }: RecordedLook, known: readonly string[]): string | null {
  if (channels === null) return null;
  if (channels.length > MOST_PANELS) {
    return `${channels.length} channels are too many to read at once. Choose ${MOST_PANELS} at most.`;
  }
  const strange = channels.find((id) => !known.includes(id));
  if (strange === undefined) return null;
  return `"${strange}" is no channel that can be drawn over ${over}. Known: ${known.slice(0, MOST_PANELS).join(', ')}.`;
}
