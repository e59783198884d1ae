import { stat } from 'node:fs/promises';
import { join } from 'node:path';
import { accepted, type Result, refused, remark } from '@pullbook/core/remark';
import type { Reader } from '@pullbook/formats';
import type { Book } from '@pullbook/store';
import { prepareExport } from './export-book.ts';
import { ZIP_LIMITS, zipOf } from './zip.ts';

/** Most bytes of text to one byte of the database: a double has 8 bytes there and up to 25 signs in a CSV. */
const TEXT_TO_BYTES = 25 / 8;
/** `book.json`, the README, and for each curve a CSV and its metadata. */
const FILES_BESIDE = 2;
const FILES_A_PULL = 2;

/**
 * The open export as one ZIP archive, in pieces as they are made: no book is held as a whole. Refused, before anything is
 * sent, where such an archive might not hold the book.
 */
export async function zippedExport(
  book: Book,
  reader: Reader,
): Promise<Result<{ fileName: string; pieces: AsyncGenerator<Uint8Array> }>> {
  const originals = await book.files();
  const { pulls, files } = await prepareExport(book, reader);
  const fileCount = FILES_BESIDE + FILES_A_PULL * pulls + originals.length;
  const bytes =
    originals.reduce((sum, { byteLength }) => sum + byteLength, 0) +
    TEXT_TO_BYTES * (await stat(join(book.folder, 'book.sqlite'))).size;
  if (fileCount > ZIP_LIMITS.files || bytes > ZIP_LIMITS.bytes) {
    const message = `The book is larger than one ZIP archive can hold (${fileCount} files; allowed are ${ZIP_LIMITS.files} files and 4 GiB). Write it into a folder instead: pullbook export --to FOLDER.`;
    return refused(remark('refusal', 'too-large-for-zip', message));
  }
  return accepted({ fileName: `${(await book.info()).name}.zip`, pieces: zipOf(files) });
}
