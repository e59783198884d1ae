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
 * Brings a file to the newest schema. A new one gets all of it in one transaction, and `fill` runs at its end: a book is
 * never there without its first rows. An older one gets each migration in its own transaction, with its number: killed in
 * the middle, the next start goes on from the last whole one.
 */
export function migrate(database: Database.Database, fill: () => void): void {
  if (schemaVersion(database) === 0) {
    const make = database.transaction(() => {
      // Asked again under the lock: another program may have made it meanwhile.
      if (schemaVersion(database) > 0) return;
      for (const statements of MIGRATIONS) database.exec(statements);
      mark(database, NEWEST_SCHEMA);
      fill();
    });
    make.immediate();
  }
  for (const [index, statements] of MIGRATIONS.entries()) {
    const version = index + 1;
    // Asked before the lock is taken, so that a book in use can be opened, and again under it.
    if (schemaVersion(database) >= version) continue;
    const run = database.transaction(() => {
      if (schemaVersion(database) >= version) return;
      database.exec(statements);
      mark(database, version);
    });
    run.immediate();
  }
}

function mark(database: Database.Database, version: number): void {
  database.pragma(`application_id = ${APPLICATION_ID}`);
  database.pragma(`user_version = ${version}`);
}
