import type { Book } from '@pullbook/store';
import { programVersion } from './places.ts';

export interface BookReport {
  id: string;
  name: string;
  invented: boolean;
  createdAt: string;
  schemaVersion: number;
  counts: { engines: number; combinations: number; pulls: number; trials: number; files: number };
  /** Of the program. */
  version: string;
}

/** What a book is and how much is in it. */
export async function bookReport(book: Book): Promise<BookReport> {
  const info = await book.info();
  return {
    ...info,
    counts: {
      engines: (await book.engines()).length,
      combinations: (await book.combinations()).length,
      pulls: (await book.pullHeads()).length,
      trials: (await book.trials()).length,
      files: (await book.files()).length,
    },
    version: programVersion(),
  };
}
