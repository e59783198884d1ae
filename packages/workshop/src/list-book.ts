import type { Engine } from '@pullbook/core/combination';
import type { Book } from '@pullbook/store';
import { plainText, type ViewOptions } from '@pullbook/views';
import { type BookReport, bookReport } from './book-report.ts';
import { type CombinationRow, combinationRows } from './combinations.ts';
import { type PullListing, pullListing } from './edge/pull-listing.ts';
import { asCarried } from './import-file.ts';
import { viewsOf } from './pull-views.ts';
import { trialCards } from './trial-pages.ts';

export interface BookListing {
  schemaVersion: 1;
  book: BookReport;
  trials: { id: string; question: string; answer: string; facts: string }[];
  pulls: PullListing[];
  combinations: Omit<CombinationRow, 'chips'>[];
  engines: Engine[];
  files: { hash: string; name: string; byteLength: number; addedAt: string }[];
}

/** What is in a book, for a list: the newest first. */
export async function listBook(book: Book, options: ViewOptions): Promise<BookListing> {
  const cards = await trialCards(book, options);
  const rows = await combinationRows(book);
  return {
    schemaVersion: 1,
    book: await bookReport(book),
    trials: cards.map(({ id, question, sentence, facts }) => ({
      id,
      question,
      answer: plainText(sentence),
      facts,
    })),
    pulls: await pullListings(book, rows),
    combinations: rows.map(({ chips: _, ...row }) => row),
    engines: await book.engines(),
    files: (await book.files()).map(({ hash, name, byteLength, addedAt }) => ({
      hash,
      name,
      byteLength,
      addedAt,
    })),
  };
}

async function pullListings(book: Book, combinations: CombinationRow[]): Promise<PullListing[]> {
  const heads = await book.pullHeads();
  const names = new Map(combinations.map((one) => [one.id, one.name]));
  const listings: PullListing[] = [];
  for (const head of heads) {
    const [view] = await viewsOf(book, [head], asCarried(head));
    listings.push(pullListing(head, view!, names.get(head.combinationId ?? '') ?? null));
  }
  return listings;
}
