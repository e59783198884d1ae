import { accepted, type Result, refused, remark } from '@pullbook/core/remark';
import { editDistance } from '@pullbook/formats';

/** Something of the book that can be asked for. */
export interface Named {
  id: string;
  name: string;
}

/** First characters of an id, enough for a table. */
export const shortId = (id: string): string => id.slice(0, 8);

/** A shorter beginning of an id would take names such as `A` for ids. */
const SHORTEST_BEGINNING = 4;

const listed = (things: readonly Named[]): string =>
  things.map((one) => `${shortId(one.id)} ${one.name}`).join('; ');

/**
 * The thing a person means by an id, the unique beginning of one (four characters or more), or its name. Refused with the nearest ones when
 * nothing fits (`unknown-id`), with the candidates when several do (`ambiguous-id`).
 *
 * @example findOne(await book.pullNames(), '3f2a', 'pull')
 */
export function findOne<T extends Named>(things: readonly T[], given: string, what: string): Result<T> {
  const wanted = given.trim().toLowerCase();
  const exact = things.find((one) => one.id.toLowerCase() === wanted);
  if (exact) return accepted(exact);
  const isBeginning = (one: Named): boolean =>
    wanted.length >= SHORTEST_BEGINNING && one.id.toLowerCase().startsWith(wanted);
  // A whole name says more than the beginning of an id that happens to read the same.
  const named = things.filter((one) => one.name.trim().toLowerCase() === wanted);
  const candidates = named.length > 0 ? named : things.filter(isBeginning);
  const [first, ...others] = candidates;
  if (first && others.length === 0) return accepted(first);
  if (first) {
    return refused(
      remark(
        'refusal',
        'ambiguous-id',
        `"${given}" fits ${candidates.length} ${what}s: ${listed(candidates.slice(0, 5))}. Give more of the id.`,
      ),
    );
  }
  return refused(remark('refusal', 'unknown-id', unknownMessage(things, wanted, given, what)));
}

function unknownMessage(things: readonly Named[], wanted: string, given: string, what: string): string {
  if (things.length === 0) return `There is no ${what} "${given}": the book has no ${what} yet.`;
  const distance = (one: Named): number =>
    Math.min(
      editDistance(one.id.slice(0, wanted.length).toLowerCase(), wanted),
      editDistance(one.name.toLowerCase(), wanted),
    );
  const nearest = [...things].sort((a, b) => distance(a) - distance(b)).slice(0, 3);
  return `There is no ${what} "${given}" in this book. Nearest: ${listed(nearest)}. Give an id, its first four characters or more, or a name.`;
}
