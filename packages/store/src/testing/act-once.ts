/**
 * Run as a program of its own, for a test that takes the room or the right to write away, or kills it: does one thing to a
 * book, and prints what became of it as JSON.
 */
import { writeSync } from 'node:fs';
import { backUpBook } from '../backup/backup-book.ts';
import { mergeBooks } from '../merge/merge-books.ts';
import { openBook } from '../open-book.ts';
import { rescueBook } from '../rescue/rescue-book.ts';
import { importedFile } from './imported-file.ts';

export type Act = 'import' | 'amend' | 'backup' | 'merge' | 'rescue';

/** Name of the file that is imported. */
export const NEW_FILE = 'a new file';

const now = new Date('2026-03-14T10:00:00.000Z');

async function act(what: Act, folder: string, other: string): Promise<void> {
  if (what === 'backup') await backUpBook(folder, other, now);
  else if (what === 'merge') await mergeBooks(folder, other, { dryRun: false });
  else if (what === 'rescue') await rescueBook(folder, () => null, now);
  else await write(what, folder);
}

async function write(what: 'import' | 'amend', folder: string): Promise<void> {
  const book = await openBook(folder);
  try {
    const { file, bytes, pulls } = importedFile(NEW_FILE);
    if (what === 'import') await book.addFileWithPulls(file, bytes, pulls);
    // A note as long as a person's is not: it must not fit.
    else await book.amendPull('file 0/0', { notes: [{ at: now.toISOString(), text: 'x'.repeat(1e6) }] }, '');
  } finally {
    await book.close();
  }
}

const [what, folder, other] = process.argv.slice(2);
if (folder !== undefined && other !== undefined) {
  try {
    writeSync(1, 'begins\n');
    await act(what as Act, folder, other);
    console.log(JSON.stringify({ code: 'none', message: '' }));
  } catch (failure) {
    const { code, message } = failure as { code?: string; message: string };
    console.log(JSON.stringify({ code, message }));
  }
}
