import type { Book, BookCounts } from '@pullbook/store';
import { programVersion } from './places.ts';

export interface BookReport {
  id: string;
  name: string;
  invented: boolean;
  createdAt: string;
  schemaVersion: number;
  counts: BookCounts;
  /** Said where the machine's clock stands behind the newest entry of the book; `null`: it does not. */
  clock: string | null;
  /** Of the program. */
  version: string;
}

/** What a book is and how much is in it. */
export async function bookReport(book: Book): Promise<BookReport> {
  const info = await book.info();
  return {
    ...info,
    counts: await book.counts(),
    clock: clockCaution(book),
    version: programVersion(),
  };
}

/** A clock that stands a little behind is no trouble: two machines never agree to the second, s. */
const CLOCK_MAY_STAND_BEHIND_S = 120;

/** What to say where the machine's clock was set back; `null` where it was not. */
export function clockCaution({ clockBehindMs }: Book): string | null {
  const seconds = clockBehindMs / 1000;
  if (seconds <= CLOCK_MAY_STAND_BEHIND_S) return null;
  const hours = seconds / 3600;
  const behind =
    hours >= 48
      ? `${Math.round(hours / 24)} days`
      : hours >= 1
        ? `${Math.round(hours)} h`
        : `${Math.round(seconds / 60)} min`;
  return `The clock of this machine stands ${behind} before the last entry of the book. Nothing is lost by it: the order goes by entry, not by time. Set the clock right, for new entries take its time as it is.`;
}
