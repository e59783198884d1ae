import type { Book, PullHead } from '@pullbook/store';

/** When a pull was made: as recorded with a time of day, else when it was put into the book; `null` unknown. */
export async function momentOf(
  book: Book,
  { id, recordedAt }: Pick<PullHead, 'id' | 'recordedAt'>,
): Promise<string | null> {
  if (recordedAt !== null) return /T\d/.test(recordedAt) ? recordedAt : null;
  const [first] = await book.logSince(`pull ${id}`, '');
  return first?.at ?? null;
}

/**
 * Name of the next pull of a day in a cell: `Pull 7` after six, or after one called `Pull 6`. `day`: ISO 8601, as long as
 * it likes; `cell: null`: any.
 */
export async function nextPullName(book: Book, day: string, cell: string | null): Promise<string> {
  const names = await book.pullNamesOfDay(day.slice(0, 10), cell);
  const numbers = names.map((name) => Number(/^pull (\d+)$/i.exec(name.trim())?.[1] ?? 0));
  return `Pull ${Math.max(names.length, ...numbers) + 1}`;
}
