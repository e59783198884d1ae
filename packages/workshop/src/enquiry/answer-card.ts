import { createHash } from 'node:crypto';
import { STILL_SIZES, type StillSizeName } from '@pullbook/charts';
import { accepted, type Result } from '@pullbook/core/remark';
import type { Book } from '@pullbook/store';
import type { ViewOptions } from '@pullbook/views';
import type { CardShows, KeptEnquiry } from '@pullbook/views/reach';
import { onLatest } from '../on-latest.ts';
import { drawnStill } from '../publish/drawn-still.ts';
import { publishedName, publishedStem } from '../publish/file-names.ts';
import type { FormatOf } from '../publish/model.ts';
import type { Still } from '../publish/still.ts';
import { signatureOf } from '../signature.ts';
import { cardNumbers } from './enquiry-report.ts';
import { forEveryone } from './for-everyone.ts';
import { enquiryOf } from './kept-enquiry.ts';
import { rungNamed } from './rung-names.ts';

/** Which card, and how. */
export interface CardRequest {
  /** Id or number; missing: the answer. */
  rung?: string | undefined;
  /** Missing: words. */
  shows?: CardShows | undefined;
  format: FormatOf<'still'>;
  size: StillSizeName;
  theme: 'light' | 'dark';
  /** `false`: transparent, to lay over a film. */
  ground: boolean;
  /** Although the answer rests on pulls that are not for everyone. */
  privateToo?: boolean | undefined;
}

const MEDIA_TYPES = { svg: 'image/svg+xml', png: 'image/png', pdf: 'application/pdf' } as const;

/** The answer of an enquiry as a picture, to look at: nothing is noted. */
export async function answerCardOf(
  book: Book,
  enquiryNamed: string,
  options: ViewOptions,
  { rung: rungGiven, shows, privateToo = false, ...look }: CardRequest,
): Promise<Result<Still & { enquiryId: string }>> {
  const found = await enquiryOf(book, enquiryNamed);
  if (!found.ok) return found;
  const { rungs } = found.value.enquiry.answer.answer;
  const named = rungGiven === undefined ? accepted(null) : rungNamed(rungs, rungGiven);
  if (!named.ok) return named;
  const shown = privateToo ? accepted<KeptEnquiry>(found.value) : await forEveryone(book, found.value);
  if (!shown.ok) return shown;
  const { enquiry } = shown.value;
  const { answerCard } = await import('@pullbook/views/reach');
  const signature = await signatureOf(book);
  const rungId = named.value?.rung.id ?? null;
  const still = answerCard(shown.value, options, signature, {
    rungId,
    ...(shows === undefined ? {} : { shows }),
  });
  const { width, height } = STILL_SIZES[look.size];
  const size = { width, height, theme: look.theme, ground: look.ground };
  const parts = [
    'card',
    named.value === null ? '' : `rung-${named.value.number}`,
    shows === 'curves' ? 'curves' : '',
    `${width}x${height}`,
    look.theme,
    look.ground ? '' : 'transparent',
  ];
  return accepted(
    {
      enquiryId: enquiry.id,
      bytes: await drawnStill(still, size, look.format, cardNumbers(enquiry, shown.value.isInvented)),
      mediaType: MEDIA_TYPES[look.format],
      fileName: publishedName(publishedStem(enquiry.question, enquiry.id, 'answer'), parts, look.format),
      width,
      height,
    },
    shown.remarks,
  );
}

/** A card that leaves the shop: noted on its enquiry by name and SHA-256. */
export async function noteCard(
  book: Book,
  { enquiryId, fileName, bytes }: Pick<Still, 'fileName' | 'bytes'> & { enquiryId: string },
  now = new Date(),
): Promise<void> {
  const hash = createHash('sha256').update(bytes).digest('hex');
  await onLatest(book, `enquiry ${enquiryId}`, undefined, async (latest) => {
    const cards = (await book.enquiry(enquiryId))?.cards ?? [];
    if (cards.some((one) => one.hash === hash && one.name === fileName)) return;
    const card = { name: fileName, hash, at: now.toISOString() };
    await book.changeEnquiry(enquiryId, { cards: [...cards, card] }, 'a card left the shop', latest);
  });
}
