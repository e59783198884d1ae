import { randomUUID } from 'node:crypto';
import { constants, existsSync } from 'node:fs';
import { access, mkdir } from 'node:fs/promises';
import { dirname, resolve } from 'node:path';
import { type Connection, connect, prepareConnection } from './connection.ts';
import { APPLICATION_ID, migrate, NEWEST_SCHEMA, schemaVersion } from './migrate.ts';
import { type Book, type BookInfo, BookTrouble } from './model.ts';
import { flushFolder, sweepOriginals } from './originals.ts';
import { patiently } from './patiently.ts';
import { databaseFile, originalsFolder } from './places.ts';
import { bookOver } from './sqlite-book.ts';
import { asBookTrouble } from './trouble.ts';

export interface OpenOptions {
  /** Make the book where there is none; `null`: a missing book is trouble. */
  create?: { name: string; invented?: boolean } | null;
  /** How long to wait for another program that writes, ms. Default 5000. */
  lockWaitMs?: number;
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
  const { create = null, lockWaitMs = 5000 } = options;
  const fill = create === null ? null : (connection: Connection) => insertNewBook(connection, create);
  return bookOver(await openConnection(folder, lockWaitMs, fill));
}

/** The connection under `openBook`. `fill` writes the first rows of a book made new; `null`: none is made. */
export async function openConnection(
  folder: string,
  lockWaitMs: number,
  fill: ((connection: Connection) => void) | null,
): Promise<Connection> {
  const root = resolve(folder);
  let connection: Connection | null = null;
  try {
    await prepareFolder(root, fill !== null);
    const opened = connect(root, databaseFile(root), lockWaitMs);
    connection = opened;
    const state = await patiently(lockWaitMs, () => recognise(opened));
    if (state === 'empty' && fill === null) throw missing(root);
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
    if (!mayCreate) throw missing(root);
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
  const mark = database.pragma('application_id', { simple: true });
  const tables = database.prepare('select count(*) from sqlite_schema').pluck().get() as number;
  if (mark !== APPLICATION_ID) {
    if (tables === 0) return 'empty';
    const message = `${databaseFile(folder)} is a database of another program, not a book. Nothing in it was changed. Give the folder of a book, or of one to be made.`;
    throw new BookTrouble('not a book', message);
  }
  const version = schemaVersion(database);
  if (version <= NEWEST_SCHEMA) return 'book';
  const message = `The book ${folder} was written by a newer Pullbook (its schema is ${version}, this program knows up to ${NEWEST_SCHEMA}). Nothing was changed. Open it with that version.`;
  throw new BookTrouble('newer', message);
}

function insertNewBook(connection: Connection, create: { name: string; invented?: boolean }): void {
  const { name, invented = false } = create;
  const info = { id: randomUUID(), name, invented, createdAt: new Date().toISOString() };
  insertBookRow(connection, info);
  connection.database
    .prepare(`insert into log (at, act, subject, reason, before, after) values (?, ?, ?, '', 'null', 'null')`)
    .run(info.createdAt, 'book created', `book ${info.id}`);
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

function missing(root: string): BookTrouble {
  const message = `There is no book in ${root}. Give the folder of a book, or import a file or start the demo to make one.`;
  return new BookTrouble('missing', message);
}
