import { chmod, copyFile, mkdir } from 'node:fs/promises';
import { join, resolve } from 'node:path';
import { copyOriginal, flushFile, hashOfFile } from '../file-hash.ts';
import { type Book, BookTrouble } from '../model.ts';
import { openBook } from '../open-book.ts';
import { databaseFile, originalsFolder } from '../places.ts';
import { type Backup, chosenBackup } from './model.ts';

export interface RestoredBackup {
  book: Book;
  madeAt: string;
  /** Originals that the backup does not have whole; the curves of their pulls are in the book all the same. */
  missing: Backup['missing'];
}

/**
 * Makes a book of a backup in a new folder that may be thrown away: killed on the way, it holds a part. Opens it, and
 * brings an older schema up to date. Throws `BookTrouble` where the copy is not what was written.
 */
export async function restoreBackup(
  from: string,
  folder: string,
  at: string | null,
): Promise<RestoredBackup> {
  const source = resolve(from);
  const backup = await chosenBackup(source, at);
  const copy = join(source, backup.database);
  await mkdir(originalsFolder(folder), { recursive: true });
  await copyFile(copy, databaseFile(folder));
  // A copy has the rights of what it was copied from; of a disk that is only read, none to write.
  await chmod(databaseFile(folder), 0o644);
  await flushFile(databaseFile(folder));
  if ((await hashOfFile(databaseFile(folder))) !== backup.databaseHash) {
    const message = `The backup ${copy} is not what was written: it is damaged. Nothing was restored. Take an earlier one with --at (${source} holds one for each "book-….json").`;
    throw new BookTrouble('damaged', message);
  }
  const book = await openBook(folder);
  try {
    const missing: Backup['missing'] = [];
    for (const { hash, name } of await book.files()) {
      if (!(await copyOriginal(source, folder, hash))) missing.push({ hash, name });
    }
    return { book, madeAt: backup.madeAt, missing };
  } catch (failure) {
    await book.close();
    throw failure;
  }
}
