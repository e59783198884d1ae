import {
  closeSync,
  copyFileSync,
  cpSync,
  openSync,
  readdirSync,
  readFileSync,
  rmSync,
  truncateSync,
  writeFileSync,
  writeSync,
} from 'node:fs';
import { join } from 'node:path';
import type { Pull } from '@pullbook/core/pull';
import { describe, expect, onTestFinished, test } from 'vitest';
import { channelsHash } from '../channels-hash.ts';
import { damageOf } from '../damage.ts';
import { Database } from '../driver.ts';
import type { Book, BookContents } from '../model.ts';
import { openBook } from '../open-book.ts';
import { originalPath } from '../originals.ts';
import { databaseFile } from '../places.ts';
import { importedFile, randomFrom } from '../testing/imported-file.ts';
import { temporaryFolder } from '../testing/temporary-folder.ts';
import { combination, compressorMap, engine, kit, prediction, pull, trial } from '../testing/things.ts';
import { openPages } from './pages.ts';
import { rescueBook } from './rescue-book.ts';
import { foundRecords } from './rows.ts';
import { tableShapes } from './tables.ts';

const NOW = new Date('2026-03-14T10:00:00.000Z');
const FILES = Array.from({ length: 12 }, (_, index) => `file ${index}`);

/** What a mapping would give: these files say themselves what is in them. */
const readAgain = ({ name }: { name: string }): Pull[] | null =>
  FILES.includes(name)
    ? importedFile(name).pulls.map((one, index) => ({ ...one, id: `again ${name} ${index}` }))
    : null;

async function filledBook(folder = temporaryFolder()): Promise<Book> {
  const book = await openBook(folder, { create: { name: 'Shop' } });
  await book.addEngine(engine);
  await book.addPackage(kit);
  for (let index = 0; index < 30; index++) await book.addCombination(combination(`c${index}`));
  await book.addSession({ id: 's', name: 'Friday', cell: 'Cell 1', day: '2026-03-14', notes: '' });
  for (const name of FILES) {
    const { file, bytes, pulls } = importedFile(name);
    await book.addFileWithPulls(
      file,
      bytes,
      pulls.map((one) => ({ ...one, combinationId: 'c3', sessionId: 's' })),
    );
  }
  await book.addPulls([pull('by hand', { combinationId: 'c29' })]);
  await book.addTrial(
    trial('t', {
      combinations: [{ key: 'A', combinationId: 'c3', shortName: 'base' }],
      pulls: FILES.map((name) => ({ pullId: `${name}/0`, key: 'A', role: 'counted', reason: null })),
    }),
  );
  // Maps and predictions enough to fill pages of their own.
  for (let index = 0; index < 12; index++) {
    await book.addCompressorMap(compressorMap(`map ${index}`, { notes: 'n'.repeat(600) }));
    await book.addPrediction({
      ...prediction(`${index}`, 't'),
      madeBy: { version: '1'.repeat(600), seed: index },
    });
  }
  for (let index = 0; index < 20; index++)
    await book.amendPull('file 1/0', { cell: `Cell ${index}` }, 'wrong');
  return book;
}

/** One sound book, closed, copied for each damage. */
const soundFolder = temporaryFolderForAll();
function temporaryFolderForAll(): Promise<{ folder: string; contents: BookContents }> {
  return (async () => {
    const { mkdtempSync } = await import('node:fs');
    const { tmpdir } = await import('node:os');
    const folder = mkdtempSync(join(tmpdir(), 'pullbook-rescue-'));
    process.on('exit', () => rmSync(folder, { recursive: true, force: true }));
    const book = await filledBook(folder);
    const contents = await book.contents();
    await book.close();
    return { folder, contents };
  })();
}

async function copyOfSound(): Promise<{ folder: string; contents: BookContents }> {
  const { folder, contents } = await soundFolder;
  const copy = temporaryFolder();
  cpSync(folder, copy, { recursive: true });
  return { folder: copy, contents };
}

function overwrite(file: string, at: number, bytes: Uint8Array): void {
  const handle = openSync(file, 'r+');
  writeSync(handle, bytes, 0, bytes.length, at);
  closeSync(handle);
}

async function rescued(folder: string) {
  const report = await rescueBook(folder, readAgain, NOW);
  const book = await openBook(folder);
  onTestFinished(() => book.close());
  return { report, book, after: await book.contents() };
}

test('the page reader finds every row that SQLite finds, values bit for bit, in the journal too', async () => {
  const book = await filledBook();
  // The newest rows stand in the journal only.
  const copy = temporaryFolder();
  for (const ending of ['', '-wal'])
    copyFileSync(databaseFile(book.folder) + ending, databaseFile(copy) + ending);
  expect(readFileSync(`${databaseFile(copy)}-wal`).length).toBeGreaterThan(4096);
  await book.close();
  const pages = openPages(databaseFile(copy), `${databaseFile(copy)}-wal`);
  const database = new Database(databaseFile(book.folder));
  onTestFinished(() => {
    pages.close();
    database.close();
  });
  const found = new Map<string, unknown[][]>();
  for (const { table, rowid, values, isStray } of foundRecords(pages, tableShapes(database))) {
    expect(isStray).toBe(false);
    const row = table.columns.map(({ isRowid }, at) => (isRowid ? rowid : (values[at] ?? null)));
    found.set(table.name, [...(found.get(table.name) ?? []), row]);
  }
  for (const { name, columns } of tableShapes(database)) {
    const rows = database
      .prepare(`select ${columns.map((one) => `"${one.name}"`).join(', ')} from "${name}" order by rowid`)
      .raw()
      .all() as unknown[][];
    const plain = rows.map((row) =>
      row.map((value) => (Buffer.isBuffer(value) ? new Uint8Array(value) : value)),
    );
    expect(found.get(name) ?? []).toEqual(plain);
  }
});

test('a sound book is the same after a rescue, but for the log saying so', async () => {
  const { folder, contents } = await copyOfSound();
  expect(damageOf(folder)).toBeNull();
  const before = readFileSync(databaseFile(folder));
  const { report, after } = await rescued(folder);
  expect(report).toMatchObject({ lost: [], poorer: [], madeAgain: [], unreadable: 0 });
  expect(report.kept).toMatchObject({ pulls: 25, trials: 1, files: 12, combinations: 30 });
  const { log, settings, ...rest } = after;
  const { log: logBefore, settings: settingsBefore, ...restBefore } = contents;
  expect(rest).toEqual(restBefore);
  expect(log.slice(0, -1)).toEqual(logBefore);
  expect(log.at(-1)).toMatchObject({ act: 'book rescued', after: report });
  expect(settings).toEqual({ ...settingsBefore, rescueToTell: report });
  // The damaged file lies beside it as it was.
  expect(readFileSync(join(folder, report.damagedFolder, 'book.sqlite')).equals(before)).toBe(true);
});

test('a book of the first schema is rescued into the newest', async () => {
  const { MIGRATIONS } = await import('../migrations/index.ts');
  const folder = temporaryFolder();
  const old = new Database(databaseFile(folder));
  old.exec(MIGRATIONS[0]!);
  old.pragma('application_id = 0x50554c4c');
  old.pragma('user_version = 1');
  old.exec(`insert into book (id, name, invented, createdAt) values ('b', 'Old', 0, '2020');
    insert into log (at, act, subject, reason, before, after) values ('2020', 'book created', 'book b', '', 'null', 'null');
    insert into engine (id, name, buildRevision, notes, invented) values ('e', 'Six', '', '', 0);`);
  old.close();
  const { after, report } = await rescued(folder);
  expect(report.lost).toEqual([]);
  expect(after.engines).toHaveLength(1);
  expect(after.log[0]).toMatchObject({ uid: 'b/1', together: 'b/1' });
});

/** Nothing in the book may be another than it was; what is not there must have been told. */
function expectHonest(after: BookContents, before: BookContents, lost: { kind: string; id: string }[]) {
  const told = new Set(lost.map(({ kind, id }) => `${kind} ${id}`));
  const pullsBefore = new Map(before.pulls.map((one) => [one.id, one]));
  const hashes = new Set(before.pulls.map((one) => channelsHash(one.channels)));
  for (const one of after.pulls) {
    expect(hashes.has(channelsHash(one.channels))).toBe(true);
    const was = pullsBefore.get(one.id);
    if (was) expect(channelsHash(one.channels)).toBe(channelsHash(was.channels));
  }
  const curves = new Map<string, number>();
  for (const { channels } of after.pulls) {
    const hash = channelsHash(channels);
    curves.set(hash, (curves.get(hash) ?? 0) + 1);
  }
  for (const count of curves.values()) expect(count).toBe(1);
  const isLogWhole = !told.has('log ');
  for (const one of before.pulls) {
    const isThere = curves.has(channelsHash(one.channels));
    if (!isThere && isLogWhole) expect(told).toContain(`pull ${one.id}`);
  }
}

describe('pages are damaged at seeded places', () => {
  test.each(Array.from({ length: 16 }, (_, seed) => seed))('seed %i', async (seed) => {
    const { folder, contents } = await copyOfSound();
    const file = databaseFile(folder);
    const random = randomFrom(`damage ${seed}`);
    const pageCount = readFileSync(file).length / 4096;
    const hits = 1 + Math.floor(random() * 4);
    for (let hit = 0; hit < hits; hit++) {
      const page = Math.floor(random() * pageCount);
      const bytes = Buffer.alloc(random() < 0.5 ? 4096 : 1 + Math.floor(random() * 300));
      const flips = random() < 0.5;
      for (let at = 0; at < bytes.length; at++) bytes[at] = flips ? Math.floor(random() * 256) : 0;
      overwrite(
        file,
        page * 4096 + (bytes.length === 4096 ? 0 : Math.floor(random() * (4096 - bytes.length))),
        bytes,
      );
    }
    const { report, after, book } = await rescued(folder);
    expectHonest(after, contents, report.lost);
    for (const { hash } of contents.files) {
      if (after.files.some((one) => one.hash === hash)) await book.original(hash);
    }
    // Originals give back what pages have lost: only what was entered by hand, or has no file's line any more, can go.
    const lostPulls = report.lost.filter(({ kind }) => kind === 'pull').length;
    expect(after.pulls.length + lostPulls).toBeGreaterThanOrEqual(
      report.lost.some(({ kind }) => kind === 'log') ? 1 : 25,
    );
  });
});

describe('damage of a kind', () => {
  const zero = (folder: string, page: number) =>
    overwrite(databaseFile(folder), (page - 1) * 4096, Buffer.alloc(4096));

  test('the first page, with header and schema: every pull comes back', async () => {
    const { folder, contents } = await copyOfSound();
    zero(folder, 1);
    expect(damageOf(folder)).not.toBeNull();
    await expect(openBook(folder)).rejects.toMatchObject({
      code: expect.stringMatching(/damaged|not a book|missing/),
    });
    const { after, report } = await rescued(folder);
    expect(after.pulls.map(({ id }) => id).sort()).toEqual(contents.pulls.map(({ id }) => id).sort());
    expect(after.trials).toEqual(contents.trials);
    expect(after.info).toEqual(contents.info);
    expect(report.lost).toEqual([]);
  });

  test('the header alone', async () => {
    const { folder, contents } = await copyOfSound();
    overwrite(databaseFile(folder), 0, Buffer.alloc(100, 0xff));
    const { after, report } = await rescued(folder);
    expect(report.lost).toEqual([]);
    expect(after.pulls).toEqual(contents.pulls);
  });

  test.each(['channel', 'pull', 'combination', 'trialPull', 'log', 'file'])(
    'every index and the root of %s',
    async (table) => {
      const { folder, contents } = await copyOfSound();
      const database = new Database(databaseFile(folder), { readonly: true });
      const roots = database
        .prepare('select rootpage from sqlite_schema where tbl_name = ? and rootpage > 0')
        .pluck()
        .all(table) as number[];
      database.close();
      for (const root of roots) zero(folder, root);
      const { after, report } = await rescued(folder);
      expectHonest(after, contents, report.lost);
      if (table === 'channel') {
        expect(after.pulls).toEqual(contents.pulls);
        expect(report.lost).toEqual([]);
      }
    },
  );

  test('a curve whose page is altered in a way SQLite does not see is made again from its file, bit for bit', async () => {
    const { folder, contents } = await copyOfSound();
    const bytes = readFileSync(databaseFile(folder));
    const victim = contents.pulls.find(({ id }) => id === 'file 5/1')!;
    const needle = Buffer.from(victim.channels[1]!.values.buffer).subarray(800, 864);
    const at = bytes.indexOf(needle);
    expect(at).toBeGreaterThan(0);
    overwrite(databaseFile(folder), at, Buffer.alloc(8, 0x42));
    expect(damageOf(folder)).toBeNull();
    const { after, report } = await rescued(folder);
    expect(report.madeAgain).toMatchObject([{ id: 'file 5/1' }]);
    expect(after.pulls).toEqual(contents.pulls);
  });

  test('the same of a pull by hand: it is taken out, told, and its trial goes on without it', async () => {
    const { folder, contents } = await copyOfSound();
    const bytes = readFileSync(databaseFile(folder));
    const victim = contents.pulls.find(({ id }) => id === 'by hand')!;
    const at = bytes.indexOf(Buffer.from(victim.channels[1]!.values.buffer));
    overwrite(databaseFile(folder), at, Buffer.alloc(8, 0x42));
    const { after, report } = await rescued(folder);
    expect(report.lost).toMatchObject([{ kind: 'pull', id: 'by hand', name: 'Pull by hand' }]);
    expect(after.pulls).toHaveLength(24);
  });

  test.each([0.2, 0.5, 0.9])('cut to %d of its length', async (part) => {
    const { folder, contents } = await copyOfSound();
    const length = readFileSync(databaseFile(folder)).length;
    truncateSync(databaseFile(folder), Math.floor(length * part));
    const { after, report } = await rescued(folder);
    expect(report.lost.map(({ kind }) => kind)).toContain('page');
    expectHonest(after, contents, report.lost);
  });

  test('nothing but the originals: said, and no original is lost', async () => {
    const { folder, contents } = await copyOfSound();
    writeFileSync(databaseFile(folder), '');
    expect(damageOf(folder)).toContain('original files are there');
    const { after, report } = await rescued(folder);
    expect(after.pulls).toEqual([]);
    expect(report.poorer).toMatchObject([{ kind: 'book' }]);
    const aside = readdirSync(join(folder, 'originals', 'set-aside')).sort();
    expect(aside).toEqual(contents.files.map(({ hash }) => hash).sort());
  });

  test('originals that are altered or gone are told by name; their curves stay', async () => {
    const { folder, contents } = await copyOfSound();
    rmSync(originalPath(folder, contents.files[0]!.hash));
    writeFileSync(originalPath(folder, contents.files[1]!.hash), 'other');
    const { after, report } = await rescued(folder);
    expect(report.lost.map(({ kind, name }) => [kind, name])).toEqual([
      ['original', 'file 0'],
      ['original', 'file 1'],
    ]);
    expect(after.pulls).toEqual(contents.pulls);
  });
});

test('what stands in the journal only is rescued too, set aside, and not played into the new book', async () => {
  const book = await filledBook();
  const contents = await book.contents();
  const folder = temporaryFolder();
  cpSync(join(book.folder, 'originals'), join(folder, 'originals'), { recursive: true });
  // As a power cut leaves it: the newest rows have not come into the database yet.
  for (const ending of ['', '-wal'])
    copyFileSync(databaseFile(book.folder) + ending, databaseFile(folder) + ending);
  await book.close();
  const journal = readFileSync(`${databaseFile(folder)}-wal`);
  expect(journal.length).toBeGreaterThan(4096);
  overwrite(databaseFile(folder), 0, Buffer.alloc(16, 0x42));
  const { after, report } = await rescued(folder);
  expect(after.pulls).toEqual(contents.pulls);
  expect(after.trials).toEqual(contents.trials);
  expect(after.log.slice(0, -1)).toEqual(contents.log);
  expect(report.lost).toEqual([]);
  const aside = readFileSync(`${databaseFile(join(folder, report.damagedFolder))}-wal`);
  expect(aside.equals(journal)).toBe(true);
});

test('a rescue that was killed before its end is begun again from the damaged file', async () => {
  const { folder, contents } = await copyOfSound();
  overwrite(databaseFile(folder), 0, Buffer.alloc(100, 0xff));
  const first = await rescueBook(folder, readAgain, NOW);
  // As a kill between taking the old file away and putting the new one in its place leaves it.
  rmSync(databaseFile(folder));
  rmSync(join(folder, first.damagedFolder, 'rescue.json'));
  const { after, report } = await rescued(folder);
  expect(report.damagedFolder).toBe(first.damagedFolder);
  expect(after.pulls).toEqual(contents.pulls);
});

test('while another program has the book open it is left alone', async () => {
  const { folder } = await copyOfSound();
  const book = await openBook(folder);
  await expect(rescueBook(folder, readAgain, NOW)).rejects.toMatchObject({ code: 'locked' });
  await book.close();
});
