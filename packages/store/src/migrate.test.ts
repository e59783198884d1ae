import Database from 'better-sqlite3';
import { expect, onTestFinished, test } from 'vitest';
import { APPLICATION_ID, migrate, NEWEST_SCHEMA, schemaVersion } from './migrate.ts';
import { openBook } from './open-book.ts';
import { temporaryFolder } from './testing/temporary-folder.ts';

function emptyDatabase(): Database.Database {
  const database = new Database(':memory:');
  onTestFinished(() => void database.close());
  return database;
}

const tables = (database: Database.Database) =>
  database
    .prepare(`select name, sql from sqlite_schema where type = 'table' and name not like 'sqlite_%'`)
    .all() as {
    name: string;
    sql: string;
  }[];

test('brings an empty file to the newest schema, marks it as a book, and does so once', () => {
  const database = emptyDatabase();
  let filled = 0;
  for (let run = 0; run < 2; run++) migrate(database, () => filled++);
  expect(filled).toBe(1);
  expect(schemaVersion(database)).toBe(NEWEST_SCHEMA);
  expect(database.pragma('application_id', { simple: true })).toBe(APPLICATION_ID);
});

test('every table is strict', () => {
  const database = emptyDatabase();
  migrate(database, () => {});
  expect(tables(database).length).toBeGreaterThan(10);
  for (const { sql } of tables(database)) expect(sql).toMatch(/\)\s*strict$/);
});

test('failed on the way it leaves nothing', () => {
  const database = emptyDatabase();
  const failing = () => {
    throw new Error('power cut');
  };
  expect(() => migrate(database, failing)).toThrow('power cut');
  expect(tables(database)).toEqual([]);
  expect(schemaVersion(database)).toBe(0);
  expect(database.pragma('application_id', { simple: true })).toBe(0);
});

test('several that make the same book at once make one', async () => {
  const folder = temporaryFolder();
  const create = { name: 'Made together' };
  const books = await Promise.all([1, 2, 3].map(() => openBook(folder, { create })));
  const ids = await Promise.all(books.map(async (book) => (await book.info()).id));
  expect(new Set(ids).size).toBe(1);
  expect((await books[0]!.log()).length).toBe(1);
  for (const book of books) await book.close();
});
