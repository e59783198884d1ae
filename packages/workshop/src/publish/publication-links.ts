import type { PublicationLink } from '@pullbook/core/publication';
import { accepted, type Result } from '@pullbook/core/remark';
import type { Book } from '@pullbook/store';
import { dayFromText } from '../edge/day-text.ts';
import { findOne } from '../find-one.ts';
import { onLatest } from '../on-latest.ts';
import { refuse } from '../refuse.ts';

/** Where a publication appeared, as a person says it. */
export interface LinkText {
  where: string;
  day?: string | null | undefined;
  note?: string | undefined;
}

/** Words that long are a text of their own. */
const LONGEST = 2000;

/** Adds where a publication appeared to what is known of that already. */
export async function addLink(book: Book, given: string, text: LinkText): Promise<Result<{ id: string }>> {
  const link = linkFrom(text);
  if (!link.ok) return link;
  return withPublication(book, given, undefined, (before) => accepted([...before, link.value]));
}

/** Takes out a place where a publication was said to have appeared, by its words. */
export async function takeOutLink(book: Book, given: string, where: string): Promise<Result<{ id: string }>> {
  return withPublication(book, given, undefined, (before) => {
    const left = before.filter((link) => link.where !== where.trim());
    if (left.length < before.length) return accepted(left);
    const known =
      before.length === 0
        ? 'No place is noted of it.'
        : `Noted are: ${before.map((link) => `"${link.where}"`).join(', ')}.`;
    return refuse('place-not-known', `It is not noted to have appeared at "${where.trim()}". ${known}`);
  });
}

/** Where a publication appeared: all of it, as it is to be. */
export async function changeLinks(
  book: Book,
  given: string,
  links: readonly LinkText[],
  stamp?: string,
): Promise<Result<{ id: string }>> {
  const read: PublicationLink[] = [];
  for (const text of links) {
    const link = linkFrom(text);
    if (!link.ok) return link;
    read.push(link.value);
  }
  return withPublication(book, given, stamp, () => accepted(read));
}

async function withPublication(
  book: Book,
  given: string,
  stamp: string | undefined,
  change: (before: PublicationLink[]) => Result<PublicationLink[]>,
): Promise<Result<{ id: string }>> {
  const named = (await book.publications()).map(({ id, question, links }) => ({ id, name: question, links }));
  const found = findOne(named, given, 'publication');
  if (!found.ok) return found;
  const { id } = found.value;
  return onLatest(book, `publication ${id}`, stamp, async (latest) => {
    const before = (await book.publications()).find((one) => one.id === id)?.links ?? [];
    const changed = change(before);
    if (!changed.ok) return changed;
    await book.changeLinks(id, changed.value, 'where it appeared', latest);
    return accepted({ id });
  });
}

function linkFrom({ where, day, note = '' }: LinkText): Result<PublicationLink> {
  const place = where.trim();
  if (place === '')
    return refuse(
      'no-place',
      'Say where it appeared: an address, or words such as "club magazine, page 12".',
    );
  if (place.length > LONGEST || note.length > LONGEST)
    return refuse('link-too-long', `Where it appeared and the note may have ${LONGEST} letters each.`);
  const read = day == null || day.trim() === '' ? accepted(null) : dayFromText(day, 'Day');
  return read.ok ? accepted({ where: place, day: read.value, note: note.trim() }) : read;
}
