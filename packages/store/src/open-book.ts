import { randomUUID } from 'node:crypto';
import { constants, existsSync } from 'node:fs';
import { access, mkdir } from 'node:fs/promises';
import { dirname, resolve } from 'node:path';
import { type Connection, connect, prepareConnection } from './connection.ts';
import { hasOriginals } from './damage.ts';
import { noBookIn, ofAnotherProgram, whatItIs } from './is-a-book.ts';
import { migrate, NEWEST_SCHEMA, schemaVersion } from './migrate.ts';
import { type Book, type BookInfo, BookTrouble } from './model.ts';
import { flushFolder, sweepOriginals } from './originals.ts';
import { patiently } from './patiently.ts';
import { databaseFile, originalsFolder } from './places.ts';
import { bookOver } from './sqlite-book.ts';
import { asBookTrouble, damagedMessage } from './trouble.ts';

export interface OpenOptions {
  /** Make the book where there is none; `null`: a missing book is trouble. */
  create?: { name: string; invented?: boolean } | null;
  /** How long to wait for another program that writes, ms. Default 5000. */
  lockWaitMs?: number;
  /** The clock; for tests. */
  now?: () => Date;
}

/**
 * Opens the book in a folder. Tidies after a writer that was killed, and brings an older schema up to date.
 *
 * Throws `BookTrouble`: missing, not a book, newer than this program, locked, read-only, full, damaged. In each case what
 * is in the folder stays as it is.
 *
 * @example const book = await openBook('shop-book', { create: { name: 'Shop' } });
 */
export async function openBook(folder: string, options: OpenOptions = {}): Promise<Book> {
  const { create = null, lockWaitMs = 5000, now } = options;
  const fill = create === null ? null : (connection: Connection) => insertNewBook(connection, create);
  const connection = await openConnection(folder, lockWaitMs, fill, now);
  return bookOver(connection, clockBehindMs(connection));
}

/** How far the clock stands behind the newest entry of the log, ms; 0 where it is not behind. */
function clockBehindMs({ database, now }: Connection): number {
  const last = database.prepare('select at from log order by id desc limit 1').pluck().get();
  const written = typeof last === 'string' ? Date.parse(last) : Number.NaN;
  return Number.isNaN(written) ? 0 : Math.max(0, written - now().getTime());
}

/** The connection under `openBook`. `fill` writes the first rows of a book made new; `null`: none is made. */
export async function openConnection(
  folder: string,
  lockWaitMs: number,
  fill: ((connection: Connection) => void) | null,
  now?: () => Date,
): Promise<Connection> {
  const root = resolve(folder);
  let connection: Connection | null = null;
  try {
    await prepareFolder(root, fill !== null);
    const opened = connect(root, databaseFile(root), lockWaitMs, now);
    connection = opened;
    const state = await patiently(lockWaitMs, () => recognise(opened));
    // Original files without a database: it was lost, and a new one must not be made over it in silence.
    if (state === 'empty' && hasOriginals(root)) throw new BookTrouble('damaged', lostMessage(root));
    if (state === 'empty' && fill === null) throw noBookIn(root);
    await patiently(lockWaitMs, () => {
      prepareConnection(opened);
      migrate(opened.database, () => fill?.(opened));
    });
    await flushFolder(root);
    await sweepUnlessBusy(opened);
    return opened;
  } catch (failure) {
    connection?.database.close();
    throw asBookTrouble(failure, root);
  }
}

async function prepareFolder(root: string, mayCreate: boolean): Promise<void> {
  if (!existsSync(databaseFile(root))) {
    if (hasOriginals(root)) throw new BookTrouble('damaged', lostMessage(root));
    if (!mayCreate) throw noBookIn(root);
    await mkdir(originalsFolder(root), { recursive: true });
    await flushFolder(dirname(root));
  } else {
    await access(databaseFile(root), constants.R_OK | constants.W_OK);
  }
  // SQLite keeps its journal beside the database, so the folder itself must take new files.
  await access(root, constants.R_OK | constants.W_OK);
}

/** Whether the file is a book this program can use, or nothing yet (a creation that was killed, for one). */
function recognise({ folder, database }: Connection): 'book' | 'empty' {
  const is = whatItIs(database);
  if (is === 'empty') return 'empty';
  if (is === 'foreign') throw ofAnotherProgram(folder);
  if (is === 'unmarked') throw new BookTrouble('damaged', damagedMessage(folder, 'its mark is gone'));
  const version = schemaVersion(database);
  if (version <= NEWEST_SCHEMA) return 'book';
  const message = `The book ${folder} was written by a newer Pullbook (its schema is ${version}, this program knows up to ${NEWEST_SCHEMA}). Nothing was changed. Open it with that version.`;
  throw new BookTrouble('newer', message);
}

function insertNewBook(connection: Connection, create: { name: string; invented?: boolean }): void {
  const { name, invented = false } = create;
  const info = { id: randomUUID(), name, invented, createdAt: connection.now().toISOString() };
  insertBookRow(connection, info);
  connection.database
    .prepare(
      `insert into log (id, uid, together, at, act, subject, reason, before, after)
        values (1, ?, ?, ?, ?, ?, '', 'null', 'null')`,
    )
    .run(`${info.id}/1`, `${info.id}/1`, info.createdAt, 'book created', `book ${info.id}`);
}

/** The one row that says whose book it is. */
export function insertBookRow({ database }: Connection, info: Omit<BookInfo, 'schemaVersion'>): void {
  database
    .prepare('insert into book (id, name, invented, createdAt) values (?, ?, ?, ?)')
    .run(info.id, info.name, Number(info.invented), info.createdAt);
}

/** A writer that is at work has nothing to be tidied after; the next start comes soon enough. */
async function sweepUnlessBusy(connection: Connection): Promise<void> {
  try {
    await sweepOriginals({ ...connection, lockWaitMs: 0 });
  } catch (failure) {
    if (!(failure instanceof BookTrouble && failure.code === 'locked')) throw failure;
  }
}

const lostMessage = (root: string): string => damagedMessage(root, 'its database is gone');
