import type Database from 'better-sqlite3';
import { MIGRATIONS } from './migrations/index.ts';

/** Marks an SQLite file as a book: `PULL` in ASCII. */
export const APPLICATION_ID = 0x50554c4c;

/** Version of the newest schema this program knows. */
export const NEWEST_SCHEMA = MIGRATIONS.length;

/** Version of the schema in the file. */
export function schemaVersion(database: Database.Database): number {
  return database.pragma('user_version', { simple: true }) as number;
}

/**
 * Runs the migrations that are lacking, each in its own transaction, with its number: killed in the middle, the next start
 * goes on from the last whole one. `fill` runs inside the transaction
 * of the first of them: a book is never there without its first rows.
 */
export function migrate(database: Database.Database, fill: () => void): void {
  for (const [index, statements] of MIGRATIONS.entries()) {
    const version = index + 1;
    const isDone = () => schemaVersion(database) >= version;
    // Asked before the lock is taken, so that a book in use can be opened, and again under it, since another program may
    // have run it meanwhile.
    if (isDone()) continue;
    const run = database.transaction(() => {
      if (isDone()) return;
      database.exec(statements);
      database.pragma(`application_id = ${APPLICATION_ID}`);
      database.pragma(`user_version = ${version}`);
      if (version === 1) fill();
    });
    run.immediate();
  }
}
