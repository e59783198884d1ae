import type { Engine } from '@pullbook/core/combination';
import { accepted, type Result } from '@pullbook/core/remark';
import type { Book } from '@pullbook/store';
import { plainText, type ViewOptions } from '@pullbook/views';
import { type BookReport, bookReport } from './book-report.ts';
import { type CombinationRow, combinationRows } from './combinations.ts';
import type { PullListing } from './edge/pull-listing.ts';
import { enquiriesPage } from './enquiry/enquiries-page.ts';
import { type ListPage, type PullSearch, searchListings, wordsIn } from './search-pulls.ts';
import { trialCards } from './trial-pages.ts';

/** Which page of a list this is. */
export type PageOf = Omit<ListPage<unknown>, 'rows'>;

export interface BookListing {
  schemaVersion: 1;
  book: BookReport;
  trials?: { id: string; question: string; answer: string; facts: string }[];
  pulls?: PullListing[];
  combinations?: Omit<CombinationRow, 'chips'>[];
  engines?: Engine[];
  files?: { hash: string; name: string; byteLength: number; addedAt: string }[];
  enquiries?: { id: string; question: string; answer: string; facts: string }[];
  /** Of the lists that come in pages. */
  pages: { trials?: PageOf; pulls?: PageOf; enquiries?: PageOf };
}

export const LISTED_KINDS = ['trials', 'pulls', 'combinations', 'engines', 'files', 'enquiries'] as const;
export type ListedKind = (typeof LISTED_KINDS)[number];

/**
 * What is in a book, for a list: the one added last first. Pulls, trials and enquiries come in pages; `search` narrows the pulls, and
 * its words every list.
 */
export async function listBook(
  book: Book,
  options: ViewOptions,
  kinds: readonly ListedKind[] = LISTED_KINDS,
  search: PullSearch = {},
): Promise<Result<BookListing>> {
  const listing: BookListing = { schemaVersion: 1, book: await bookReport(book), pages: {} };
  const { find, page, size } = search;
  const words = wordsIn(find);
  const holds = (...texts: string[]) => words.every((word) => texts.join(' ').toLowerCase().includes(word));
  if (kinds.includes('trials')) {
    const { rows, ...where } = await trialCards(book, options, { find, page, size });
    listing.pages.trials = where;
    listing.trials = rows.map(({ id, question, sentence, facts }) => ({
      id,
      question,
      answer: plainText(sentence),
      facts,
    }));
  }
  if (kinds.includes('pulls')) {
    const found = await searchListings(book, search, options);
    if (!found.ok) return found;
    const { rows, total, all, page: at, pages } = found.value;
    listing.pages.pulls = { total, all, page: at, pages };
    listing.pulls = rows;
  }
  if (kinds.includes('combinations')) {
    const rows = await combinationRows(book);
    listing.combinations = rows
      .filter((one) => holds(one.name, one.engineName))
      .map(({ chips: _, ...row }) => row);
  }
  if (kinds.includes('engines'))
    listing.engines = (await book.engines()).filter((one) => holds(one.name, one.buildRevision, one.notes));
  if (kinds.includes('files')) {
    listing.files = (await book.files())
      .filter((one) => holds(one.name))
      .map(({ hash, name, byteLength, addedAt }) => ({ hash, name, byteLength, addedAt }));
  }
  if (kinds.includes('enquiries')) {
    const found = await enquiriesPage(book, options, { find, page, size });
    if (!found.ok) return found;
    const { rows, ...where } = found.value;
    listing.pages.enquiries = where;
    listing.enquiries = rows.map(({ id, question, sentence, facts }) => ({
      id,
      question,
      answer: plainText(sentence),
      facts,
    }));
  }
  return accepted(listing);
}
