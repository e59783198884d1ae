import type BetterSqlite3 from 'better-sqlite3';
import { APPLICATION_ID } from './migrate.ts';
import { BookTrouble } from './model.ts';
import { databaseFile } from './places.ts';

/** What an SQLite file is, by its mark and its tables. `unmarked`: a book whose mark is damaged. */
export function whatItIs(database: BetterSqlite3.Database): 'book' | 'unmarked' | 'empty' | 'foreign' {
  if (database.pragma('application_id', { simple: true }) === APPLICATION_ID) return 'book';
  const tables = database.prepare("select name from sqlite_schema where type = 'table'").pluck().all();
  if (tables.length === 0) return 'empty';
  return ['book', 'pull', 'channel', 'log'].every((name) => tables.includes(name)) ? 'unmarked' : 'foreign';
}

export function noBookIn(root: string): BookTrouble {
  const message = `There is no book in ${root}. Give the folder of a book, or import a file or start the demo to make one.`;
  return new BookTrouble('missing', message);
}

export function ofAnotherProgram(root: string): BookTrouble {
  const message = `${databaseFile(root)} is a database of another program, not a book. Nothing in it was changed. Give the folder of a book, or of one to be made.`;
  return new BookTrouble('not a book', message);
}
