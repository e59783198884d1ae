import { mkdirSync } from 'node:fs';
import { PLAIN_TREATMENT, type Pull } from '@pullbook/core/pull';
import type BetterSqlite3 from 'better-sqlite3';
import { expect, onTestFinished, test } from 'vitest';
import { channelsHash } from './channels-hash.ts';
import { connect } from './connection.ts';
import { Database } from './driver.ts';
import { toJson } from './json.ts';
import { APPLICATION_ID, migrate, NEWEST_SCHEMA, schemaVersion } from './migrate.ts';
import { MIGRATIONS } from './migrations/index.ts';
import { insertBookRow, openBook } from './open-book.ts';
import { databaseFile, originalsFolder } from './places.ts';
import { bytesFromSamples } from './samples.ts';
import { temporaryFolder } from './testing/temporary-folder.ts';
import { AT, prediction, pull } from './testing/things.ts';

function emptyDatabase(): BetterSqlite3.Database {
  const database = new Database(':memory:');
  onTestFinished(() => void database.close());
  return database;
}

const tables = (database: BetterSqlite3.Database) =>
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

test('a book of the second schema opens: its log has global names, and what was done before can be undone', async () => {
  const folder = temporaryFolder();
  mkdirSync(originalsFolder(folder), { recursive: true });
  const older = connect(folder, databaseFile(folder), 100);
  for (const statements of MIGRATIONS.slice(0, 2)) older.database.exec(statements);
  older.database.pragma(`application_id = ${APPLICATION_ID}`);
  older.database.pragma('user_version = 2');
  insertBookRow(older, { id: 'old', name: 'Old book', invented: true, createdAt: AT });
  older.database.exec(
    `insert into engine (id, name, buildRevision, notes, invented) values ('six', 'Six', '1', '', 1)`,
  );
  older.database
    .prepare(`insert into log (at, act, subject, reason, before, after) values (?, ?, ?, '', 'null', 'null')`)
    .run(AT, 'engine added', 'engine six');
  await older.rows.destroy();

  const book = await openBook(folder);
  expect(await book.log()).toMatchObject([{ uid: 'old/1', together: 'old/1', undoes: null }]);
  expect(await book.engines()).toMatchObject([{ id: 'six' }]);
  await book.undo('old/1');
  expect(await book.engines()).toEqual([]);
  expect((await book.contents()).engines).toMatchObject([{ id: 'six' }]);
  await book.close();
});

test('a book of the first schema opens with its pulls whole, read as they come, and takes the new field', async () => {
  const folder = temporaryFolder();
  mkdirSync(originalsFolder(folder), { recursive: true });
  const older = connect(folder, databaseFile(folder), 100);
  older.database.exec(MIGRATIONS[0]!);
  older.database.pragma(`application_id = ${APPLICATION_ID}`);
  older.database.pragma('user_version = 1');
  insertBookRow(older, { id: 'old', name: 'Old book', invented: true, createdAt: AT });
  const stored = pull('one', { cell: 'cell 1' });
  older.database.transaction(() => {
    for (const [place, { meaning, name, unit, kind, origin, values }] of stored.channels.entries())
      older.database
        .prepare('insert into channel values (?, ?, ?, ?, ?, ?, ?, ?, ?)')
        .run(stored.id, place, meaning, name, unit, kind, origin, values.length, bytesFromSamples(values));
    older.database
      .prepare(
        `insert into pull (id, name, recordedAt, cell, form, summary, weather, carried, sweep, tune, places, notes, events,
           outcome, origin, invented, channelsHash)
         values (@id, @name, @recordedAt, @cell, @form, 'null', 'null', @carried, @sweep, '{}', '{}', '[]', '[]',
           @outcome, @origin, 1, @channelsHash)`,
      )
      .run({
        ...pickText(stored, ['id', 'name', 'recordedAt', 'cell', 'form', 'outcome', 'origin']),
        carried: toJson(stored.carried),
        sweep: toJson(stored.sweep),
        channelsHash: channelsHash(stored.channels),
      });
  })();
  await older.rows.destroy();

  const book = await openBook(folder);
  expect(await book.info()).toMatchObject({ id: 'old', schemaVersion: NEWEST_SCHEMA });
  expect(await book.pull('one')).toEqual({ ...stored, treatment: PLAIN_TREATMENT });
  const treatment = { lags: { lambda: 0.3 }, windowRpm: null, binWidthRpm: 100, addInertia: false };
  await book.amendPull('one', { treatment }, 'the probe sits far down the pipe');
  expect((await book.log()).at(-1)).toMatchObject({
    before: { treatment: PLAIN_TREATMENT },
    after: { treatment },
  });
  await book.close();
  const again = await openBook(folder);
  expect(await again.pull('one')).toEqual({ ...stored, treatment });
  await again.close();
});

test.each([1, 2, 3, 4, 5, 6])(
  'an empty book of schema %i migrates, with foreign keys that hold',
  async (version) => {
    const folder = temporaryFolder();
    mkdirSync(originalsFolder(folder), { recursive: true });
    const older = connect(folder, databaseFile(folder), 100);
    for (const statements of MIGRATIONS.slice(0, version)) older.database.exec(statements);
    older.database.pragma(`application_id = ${APPLICATION_ID}`);
    older.database.pragma(`user_version = ${version}`);
    insertBookRow(older, { id: 'old', name: 'Old book', invented: true, createdAt: AT });
    await older.rows.destroy();
    const book = await openBook(folder);
    expect(await book.info()).toMatchObject({ id: 'old', schemaVersion: NEWEST_SCHEMA });
    expect(await book.compressorMaps()).toEqual([]);
    expect(await book.publications()).toEqual([]);
    expect(await book.enquiries()).toEqual([]);
    await book.close();
    const database = new Database(databaseFile(folder));
    onTestFinished(() => void database.close());
    expect(database.pragma('foreign_key_check')).toEqual([]);
    expect(database.pragma('integrity_check', { simple: true })).toBe('ok');
  },
);

test('a book of the fourth schema keeps its predictions, their order and their triggers, and takes new ones', async () => {
  const folder = temporaryFolder();
  mkdirSync(originalsFolder(folder), { recursive: true });
  const older = connect(folder, databaseFile(folder), 100);
  for (const statements of MIGRATIONS.slice(0, 4)) older.database.exec(statements);
  older.database.pragma(`application_id = ${APPLICATION_ID}`);
  older.database.pragma('user_version = 4');
  insertBookRow(older, { id: 'old', name: 'Old book', invented: true, createdAt: AT });
  older.database.exec(`
    insert into trial (id, question, kind, correction, averagesWindowRpm, remark, createdAt, invented)
      values ('t', 'Which pulley?', 'comparison', 'sae-j1349', 'null', '', '${AT}', 1);
    insert into prediction (id, trialId, key, what, value, low, high, basis, at) values
      ('first', 't', 'B', 'meanGain', 0.02, 0.01, 0.03, 'guess', '${AT}'),
      ('gone', 't', 'B', 'peakPower', 200000, 190000, 210000, 'guess', '${AT}'),
      ('last', 't', 'B', 'peakPower', 210000, 200000, 220000, 'scaled', '${AT}');
    insert into withdrawn (kind, id, at) values ('prediction', 'gone', '${AT}');
  `);
  await older.rows.destroy();

  const book = await openBook(folder);
  expect(await book.predictions(['t'])).toEqual([
    {
      id: 'last',
      trialId: 't',
      key: 'B',
      what: 'peakPower',
      value: 210_000,
      low: 200_000,
      high: 220_000,
      basis: 'scaled',
      at: AT,
    },
    {
      id: 'first',
      trialId: 't',
      key: 'B',
      what: 'meanGain',
      value: 0.02,
      low: 0.01,
      high: 0.03,
      basis: 'guess',
      at: AT,
    },
  ]);
  await book.addPrediction({
    ...prediction('new', 't'),
    what: 'highestBoost',
    value: 5e4,
    low: 4e4,
    high: 6e4,
  });
  expect((await book.predictions())[0]).toMatchObject({ what: 'highestBoost' });
  const foreign = book.addPrediction(prediction('of no trial', 'nowhere'));
  await expect(foreign).rejects.toThrow(/FOREIGN KEY/i);
  await book.close();

  const database = new Database(databaseFile(folder));
  onTestFinished(() => void database.close());
  expect(() => database.exec(`update prediction set low = 0 where id = 'first'`)).toThrow('never altered');
  expect(() => database.exec(`delete from prediction where id = 'first'`)).toThrow('never altered');
  expect(() => database.exec(`update prediction set what = 'luck'`)).toThrow();
  expect(database.pragma('foreign_key_check')).toEqual([]);
  const plan = database.prepare('explain query plan select * from prediction where trialId = ?').all('t');
  expect(JSON.stringify(plan)).toContain('predictionOfTrial');
});

const pickText = <Field extends keyof Pull>(from: Pull, fields: Field[]) =>
  Object.fromEntries(fields.map((field) => [field, from[field]]));
