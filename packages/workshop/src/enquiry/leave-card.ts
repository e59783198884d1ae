import { writeFile } from 'node:fs/promises';
import { join, resolve } from 'node:path';
import { accepted, type Remark, type Result, refused } from '@pullbook/core/remark';
import type { Book } from '@pullbook/store';
import type { ViewOptions } from '@pullbook/views';
import { diskRemark } from '../publish/disk-words.ts';
import { withPartFolder } from '../publish/part-folder.ts';
import { folderAt } from '../publish/publish-trial.ts';
import { putInPlace } from '../publish/put-in-place.ts';
import { answerCardOf, type CardRequest, noteCard } from './answer-card.ts';

/** A card as a file. */
export interface CardFile {
  enquiryId: string;
  path: string;
  bytes: number;
  width: number;
  height: number;
  /** It is noted on the enquiry as having left the shop. */
  isNoted: boolean;
}

/** Makes a card in a folder, whole or not at all, and notes it on its enquiry; a draft is not noted. */
export async function leaveCard(
  book: Book,
  enquiryNamed: string,
  options: ViewOptions,
  request: CardRequest,
  { folder, draft = false }: { folder: string; draft?: boolean | undefined },
): Promise<Result<CardFile>> {
  const card = await answerCardOf(book, enquiryNamed, options, request);
  if (!card.ok) return card;
  const { enquiryId, fileName, bytes, width, height } = card.value;
  const out = resolve(folder);
  const there = await folderAt(out);
  if (!there.ok) return there;
  const known = new Set((await book.enquiry(enquiryId))?.cards.map(({ hash }) => hash));
  let remarks: Remark[];
  try {
    const placed = await withPartFolder(out, async (part) => {
      await writeFile(join(part, fileName), bytes);
      return putInPlace(join(part, fileName), out, known);
    });
    remarks = placed.remarks;
  } catch (trouble) {
    return refused(diskRemark(trouble, join(out, fileName)));
  }
  if (!draft) await noteCard(book, card.value);
  return accepted(
    { enquiryId, path: join(out, fileName), bytes: bytes.length, width, height, isNoted: !draft },
    [...card.remarks, ...remarks],
  );
}
