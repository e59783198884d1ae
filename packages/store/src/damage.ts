import { existsSync, readdirSync, statSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { Database } from './driver.ts';
import { whatItIs } from './is-a-book.ts';
import { schemaVersion } from './migrate.ts';
import { databaseFile, originalsFolder } from './places.ts';

/** Above this many bytes a book is not looked through at each start: it would take seconds. */
const LOOKED_THROUGH_UP_TO = 400_000_000;

/**
 * Whether the book in a folder is damaged, in words; `null`: nothing is seen of it. Looks through all pages of a book of
 * usual size without changing anything. A damaged curve is not seen here but by its hash, when it is read.
 */
export function damageOf(folder: string): string | null {
  const root = resolve(folder);
  const file = databaseFile(root);
  const size = existsSync(file) ? statSync(file).size : 0;
  if (size === 0) return hasOriginals(root) ? 'its database is gone, and its original files are there' : null;
  try {
    const database = new Database(file, { readonly: true });
    try {
      const is = whatItIs(database);
      if (is === 'unmarked') return 'its mark is gone';
      if (is !== 'book') return null;
      if (schemaVersion(database) === 0) return 'its schema is gone';
      if (size > LOOKED_THROUGH_UP_TO) return null;
      const said = database.pragma('quick_check(1)', { simple: true }) as string;
      if (said !== 'ok') return said;
      const books = database.prepare('select count(*) from book').pluck().get();
      return books === 1 ? null : 'the line with its name is gone';
    } finally {
      database.close();
    }
  } catch (failure) {
    const code = failure instanceof Error && 'code' in failure ? String(failure.code) : '';
    if (/^SQLITE_(CORRUPT|NOTADB|FORMAT|IOERR|ERROR)/.test(code)) return (failure as Error).message;
    // Locked, not to be opened by this user, …: whoever opens it says that better.
    return null;
  }
}

/** Whether original files are on the shelves: then there was a book. */
export function hasOriginals(root: string): boolean {
  const shelves = originalsFolder(root);
  return (
    existsSync(shelves) &&
    readdirSync(shelves).some(
      (name) => /^[0-9a-f]{2}$/.test(name) && readdirSync(join(shelves, name)).length > 0,
    )
  );
}
