import type { Enquiry } from '@pullbook/core/reach';
import { accepted, type Result } from '@pullbook/core/remark';
import type { Book } from '@pullbook/store';
import type { ViewOptions } from '@pullbook/views';
import { type EnquiryCard, enquiryCard } from '@pullbook/views/reach';
import { findNamed } from '../find-named.ts';
import { type ListPage, wordsIn } from '../search-pulls.ts';
import { keptEnquiry } from './kept-enquiry.ts';
import { logSinceAsked } from './log-since.ts';

/** Which enquiries; missing: all. */
export interface EnquirySearch {
  /** Words that must all be there, parts of words too: of the question, the combination, the target, the ways. */
  find?: string | undefined;
  /** Only of this combination: id, beginning of an id, or name. */
  combination?: string | undefined;
  /** From 1. */
  page?: number | undefined;
  size?: number | undefined;
}

export const ENQUIRIES_A_PAGE = 20;

/** What was asked before, the last first, each with its answer in few words and what is no longer so. */
export async function enquiriesPage(
  book: Book,
  options: ViewOptions,
  { find, combination, page = 1, size = ENQUIRIES_A_PAGE }: EnquirySearch = {},
): Promise<Result<ListPage<EnquiryCard>>> {
  const found =
    combination === undefined ? null : await findNamed(book, ['combination'], combination, 'combination');
  if (found?.ok === false) return found;
  const all = (await book.enquiryNames()).filter(
    (one) => found === null || one.combinationId === found.value.id,
  );
  const words = wordsIn(find);
  const fitting = all.filter((one) => words.every((word) => one.words.includes(word)));
  const shown: Enquiry[] = [];
  for (const { id } of fitting.slice((page - 1) * size, page * size)) {
    const enquiry = await book.enquiry(id);
    if (enquiry !== null) shown.push(enquiry);
  }
  const since = await logSinceAsked(
    book,
    shown.map(({ id }) => id),
  );
  const rows: EnquiryCard[] = [];
  for (const one of shown)
    rows.push(enquiryCard(await keptEnquiry(book, one, since.get(one.id) ?? []), options));
  const pages = Math.max(1, Math.ceil(fitting.length / size));
  return accepted({ rows, total: fitting.length, all: all.length, page, pages });
}
