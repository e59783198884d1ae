import { type Book, BookTrouble } from '@pullbook/store';

/** So often in a row another writer would have to be first; then something is wrong. */
const TRIES = 20;

/**
 * Does a change that reads a thing and writes it back, so that nobody's writing in between is lost. `given`: the stamp of
 * what a person has looked at; where somebody wrote since, the change is refused (`changed meanwhile`). Without one the
 * change is done again on what stands then: it only puts its own words over it.
 */
export async function onLatest<T>(
  book: Book,
  subject: string,
  given: string | undefined,
  change: (stamp: string) => Promise<T>,
): Promise<T> {
  for (let tries = 1; ; tries += 1) {
    try {
      return await change(given ?? (await book.stamp(subject)));
    } catch (trouble) {
      const isOvertaken = trouble instanceof BookTrouble && trouble.since.length > 0;
      if (given !== undefined || !isOvertaken || tries === TRIES) throw trouble;
    }
  }
}
