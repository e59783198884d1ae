import { type Remark, remark } from '@pullbook/core/remark';
import type { Book, LogEntry } from '@pullbook/store';
import { momentText } from '@pullbook/views';
import { plainAct } from './history-words.ts';

/** The entry that took a file out of the book, where the last that was done with it was that; else `null`. */
export async function takenBack(book: Book, hash: string): Promise<LogEntry | null> {
  const { entries } = await book.logPage({ subject: `file ${hash}`, limit: 1 });
  const [last] = entries;
  return last?.act.startsWith('undone: ') && plainAct(last.act) === 'file added' ? last : null;
}

/** Said of bytes that went in again after somebody took them back: it may have been for a reason. */
export const inAgain = (entry: LogEntry): Remark =>
  remark(
    'note',
    'file-in-again',
    `${wasTakenBack(entry)} They are in again now, read as confirmed this time. What was written down of the pulls taken back stays with those; undo this import if they were taken back for good.`,
  );

/** The same before anything is stored. */
export const wouldBeInAgain = (entry: LogEntry): Remark =>
  remark(
    'note',
    'file-taken-back',
    `${wasTakenBack(entry)} Importing puts them in again. Look up in the history why they were taken back, if you do not know.`,
  );

function wasTakenBack({ at, reason, before, after }: LogEntry): string {
  const { name } = (after ?? before ?? {}) as { name?: string };
  const as = name ? `, as ${name},` : '';
  const why = reason === '' ? '' : ` (“${reason}”)`;
  return `These bytes were in the book before${as} and were taken back on ${momentText(at)} UTC${why}.`;
}
