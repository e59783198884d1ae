import type BetterSqlite3 from 'better-sqlite3';
import { Kysely, SqliteDialect } from 'kysely';
import { Database } from './driver.ts';
import type { Tables } from './tables.ts';

/** Whatever runs queries: the book's own connection, or the same inside a transaction. */
export type Rows = Kysely<Tables>;

export interface Connection {
  folder: string;
  /** How long a write waits for another program's, ms. */
  lockWaitMs: number;
  /** The clock that entries of the log are written by. */
  now: () => Date;
  database: BetterSqlite3.Database;
  rows: Rows;
}

/**
 * SQLite itself waits this long, ms, and stops the whole process meanwhile; the rest of the wait is slept through in
 * `transaction.ts`, so that a server goes on answering.
 */
const WAIT_INSIDE_SQLITE_MS = 20;

/** Opens the file as it is: nothing in it is changed by this. */
export function connect(
  folder: string,
  file: string,
  lockWaitMs: number,
  now: () => Date = () => new Date(),
): Connection {
  const database = new Database(file, { timeout: WAIT_INSIDE_SQLITE_MS });
  return {
    folder,
    lockWaitMs,
    now,
    database,
    rows: new Kysely<Tables>({ dialect: new SqliteDialect({ database }) }),
  };
}

/** Settings of a connection to what is known to be a book. The journal's mode stays in the file; the others do not. */
export function prepareConnection({ database }: Connection): void {
  database.pragma('journal_mode = WAL');
  // An accepted pull must survive the mains switch, so each commit is flushed.
  database.pragma('synchronous = FULL');
  database.pragma('foreign_keys = ON');
  // Without it `insert or replace` would delete measured rows past the triggers that protect them.
  database.pragma('recursive_triggers = ON');
}
