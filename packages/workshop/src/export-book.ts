import { existsSync } from 'node:fs';
import { rename, rm } from 'node:fs/promises';
import { join, resolve } from 'node:path';
import { audienceOn, isOpen } from '@pullbook/core/pull';
import { accepted, type Result, refused, remark } from '@pullbook/core/remark';
import { type ExportFile, exportFiles, type LeftOut, type Reader, seenBy } from '@pullbook/formats';
import type { Book } from '@pullbook/store';
import { inNewFolder, isTaken } from './in-new-folder.ts';
import { writeAllFlushed } from './write-flushed.ts';

export interface ExportReport {
  folder: string;
  files: number;
  pulls: number;
  /** For whom it was made: `shop`: everything, private things too. */
  reader: Reader;
  /** What that reader may not see, and is not in it. */
  leftOut: LeftOut;
  /** Pulls and trials in it that are not for everyone. */
  privateThings: number;
}

/** An export of a book that has not been written anywhere yet. */
export interface PreparedExport {
  files: AsyncGenerator<ExportFile>;
  pulls: number;
  leftOut: LeftOut;
  privateThings: number;
}

/** The files of the open export as a reader may have them, made one after the other as they are taken. */
export async function prepareExport(
  book: Book,
  reader: Reader,
  day = new Date().toISOString().slice(0, 10),
): Promise<PreparedExport> {
  const { contents, leftOut } = seenBy(await book.outline(), reader, day);
  const files = exportFiles(contents, {
    channelsOf: (id) => book.channels(id),
    originalOf: (hash) => book.original(hash),
  });
  const privateThings = [...contents.pulls, ...contents.trials].filter(
    ({ audience }) => !isOpen(audienceOn(audience, day)),
  ).length;
  return { files, pulls: contents.pulls.length, leftOut, privateThings };
}

/**
 * Writes the book as open files into a new folder, whole or not at all. A folder that already holds something is refused;
 * with `replace` an earlier export (and nothing else) gives way to the new one once that is whole.
 */
export async function exportBook(
  book: Book,
  folder: string,
  options: { replace?: boolean | undefined; reader?: Reader | undefined } = {},
): Promise<Result<ExportReport>> {
  const wanted = resolve(folder);
  const taken = await isTaken(wanted);
  if (taken && !(options.replace && existsSync(join(wanted, 'book.json')))) {
    const advice = options.replace
      ? 'It is not an earlier export (no book.json in it), so it is not replaced. Name another folder.'
      : 'Nothing was written. Name a new folder, or ask for an earlier export to be replaced (--replace).';
    return refused(remark('refusal', 'folder-not-empty', `The folder ${wanted} is not empty. ${advice}`));
  }
  const reader = options.reader ?? 'shop';
  const { files, ...counts } = await prepareExport(book, reader);
  const earlier = `${wanted}.earlier-${process.pid}`;
  let written = 0;
  await inNewFolder(wanted, async (temporary) => {
    written = await writeAllFlushed(under(temporary, files));
    if (taken) await rename(wanted, earlier);
  });
  await rm(earlier, { recursive: true, force: true });
  return accepted({ folder: wanted, files: written, reader, ...counts });
}

async function* under(folder: string, files: AsyncIterable<ExportFile>): AsyncGenerator<ExportFile> {
  for await (const { path, bytes } of files) yield { path: join(folder, path), bytes };
}
