import { appendFileSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, onTestFinished, test } from 'vitest';
import { damageOf } from '../damage.ts';
import { Database } from '../driver.ts';
import type { Book } from '../model.ts';
import { openBook } from '../open-book.ts';
import { originalPath } from '../originals.ts';
import { databaseFile } from '../places.ts';
import { importedFile } from '../testing/imported-file.ts';
import { temporaryFolder } from '../testing/temporary-folder.ts';
import { engine, pull, trial } from '../testing/things.ts';
import { backUpBook } from './backup-book.ts';
import { checkBackup } from './check.ts';
import { backupsIn } from './model.ts';
import { restoreBackup } from './restore.ts';

const AT = new Date('2026-03-14T10:00:00.000Z');
const LATER = new Date('2026-03-15T10:00:00.000Z');

async function filledBook(): Promise<Book> {
  const book = await openBook(temporaryFolder(), { create: { name: 'Shop' } });
  onTestFinished(() => book.close());
  await book.addEngine(engine);
  for (const name of ['one', 'two', 'three']) {
    const { file, bytes, pulls } = importedFile(name);
    await book.addFileWithPulls(file, bytes, pulls);
  }
  await book.addPulls([pull('by hand')]);
  await book.addTrial(trial('trial'));
  return book;
}

async function restored(from: string, at: string | null = null) {
  const back = await restoreBackup(from, temporaryFolder(), at);
  onTestFinished(() => back.book.close());
  return back;
}

test('backed up, damaged, restored: the contents and every original are the same', async () => {
  const book = await filledBook();
  const contents = await book.contents();
  const to = temporaryFolder();
  const backup = await backUpBook(book.folder, to, AT);
  expect(backup).toMatchObject({
    bookName: 'Shop',
    pulls: 7,
    files: 3,
    missing: [],
    madeAt: AT.toISOString(),
  });
  expect(await checkBackup(to, null)).toEqual({ backup, faults: [] });
  await book.close();
  writeFileSync(databaseFile(book.folder), Buffer.alloc(40_000));

  const back = await restored(to);
  expect(await back.book.contents()).toEqual(contents);
  for (const { hash } of contents.files) {
    expect(Buffer.from(await back.book.original(hash))).toEqual(
      readFileSync(originalPath(book.folder, hash)),
    );
  }
  expect(back.missing).toEqual([]);
});

test('a second backup shares the originals, and the first can still be restored', async () => {
  const book = await filledBook();
  const first = await book.contents();
  const to = temporaryFolder();
  await backUpBook(book.folder, to, AT);
  const { file, bytes, pulls } = importedFile('four');
  await book.addFileWithPulls(file, bytes, pulls);
  await backUpBook(book.folder, to, LATER);
  expect((await backupsIn(to)).map(({ madeAt, pulls: count }) => [madeAt, count])).toEqual([
    [LATER.toISOString(), 9],
    [AT.toISOString(), 7],
  ]);
  const shelves = readdirSync(join(to, 'originals'), { recursive: true, withFileTypes: true });
  expect(shelves.filter((entry) => entry.isFile())).toHaveLength(4);
  expect(await (await restored(to, '2026-03-14')).book.contents()).toEqual(first);
  expect(await (await restored(to)).book.contents()).toEqual(await book.contents());
  await expect(restored(to, '2025')).rejects.toMatchObject({
    code: 'missing',
    message: expect.stringContaining(AT.toISOString()),
  });
});

test('a book that is written meanwhile is copied as it is at one moment', async () => {
  const book = await filledBook();
  const to = temporaryFolder();
  let isDone = false;
  const copying = backUpBook(book.folder, to, AT).finally(() => {
    isDone = true;
  });
  let written = 0;
  do {
    const { file, bytes, pulls } = importedFile(`meanwhile ${written}`);
    await book.addFileWithPulls(file, bytes, pulls);
    written += 1;
  } while (!isDone);
  const backup = await copying;
  expect(written).toBeGreaterThan(1);
  expect((await checkBackup(to, null)).faults).toEqual([]);
  const { book: back } = await restored(to);
  const pulls = await back.contents().then((contents) => contents.pulls);
  expect(pulls).toHaveLength(backup.pulls);
  expect(pulls).toEqual((await book.contents()).pulls.slice(0, backup.pulls));
});

test('whatever is altered in a backup is found, and named', async () => {
  const book = await filledBook();
  const to = temporaryFolder();
  const backup = await backUpBook(book.folder, to, AT);
  const [file] = await book.files();
  appendFileSync(originalPath(to, file!.hash), 'x');
  expect((await checkBackup(to, null)).faults).toEqual([expect.stringContaining(file!.hash)]);
  // A further backup mends it from the book, which has it whole.
  await backUpBook(book.folder, to, LATER);
  expect((await checkBackup(to, '2026-03-14')).faults).toEqual([]);

  const copy = new Database(join(to, backup.database));
  copy.exec(
    'drop trigger channelIsNotAltered; update channel set samples = zeroblob(8 * count) where place = 1',
  );
  copy.close();
  const { faults } = await checkBackup(to, '2026-03-14');
  expect(faults[0]).toContain('is not what was written');
  expect(faults.filter((fault) => fault.includes('the channels of the pull'))).toHaveLength(7);
  await expect(restored(to, '2026-03-14')).rejects.toMatchObject({ code: 'damaged' });
  expect((await restored(to)).madeAt).toBe(LATER.toISOString());
});

test('an original the book has lost is said, and the rest is backed up', async () => {
  const book = await filledBook();
  const [file] = await book.files();
  writeFileSync(originalPath(book.folder, file!.hash), 'other bytes');
  const to = temporaryFolder();
  const backup = await backUpBook(book.folder, to, AT);
  expect(backup.missing).toEqual([{ hash: file!.hash, name: file!.name }]);
  const back = await restored(to);
  expect(back.missing).toEqual(backup.missing);
  expect(await back.book.contents()).toEqual(await book.contents());
});

test('of a damaged book no backup is made, the earlier ones stay, and it is the book that is named', async () => {
  const book = await filledBook();
  const to = temporaryFolder();
  await backUpBook(book.folder, to, AT);
  await book.close();
  // Whole pages but the first, which SQLite needs to open it and to see what it is.
  const bytes = readFileSync(databaseFile(book.folder));
  const size = bytes.readUInt16BE(16);
  const seen = new Database(databaseFile(book.folder), { readonly: true });
  const root = seen
    .prepare("select rootpage from sqlite_schema where name = 'engine'")
    .pluck()
    .get() as number;
  seen.close();
  writeFileSync(databaseFile(book.folder), bytes.fill(0x42, (root - 1) * size, root * size));
  expect(damageOf(book.folder)).not.toBeNull();
  await expect(backUpBook(book.folder, to, LATER)).rejects.toMatchObject({
    code: 'damaged',
    message: expect.stringContaining(`pullbook rescue --book ${book.folder}`),
  });
  expect((await backupsIn(to)).map(({ madeAt }) => madeAt)).toEqual([AT.toISOString()]);
  expect(readdirSync(to).filter((name) => name.includes('.part'))).toEqual([]);
});

test('refused: into the book, over another book, among the backups of another', async () => {
  const book = await filledBook();
  const other = await filledBook();
  const to = temporaryFolder();
  await backUpBook(book.folder, to, AT);
  for (const wrong of [book.folder, join(book.folder, 'backup'), other.folder])
    await expect(backUpBook(book.folder, wrong, AT)).rejects.toMatchObject({ code: 'exists' });
  await expect(backUpBook(other.folder, to, LATER)).rejects.toMatchObject({
    code: 'exists',
    message: expect.stringContaining('another book'),
  });
  expect(await backupsIn(to)).toHaveLength(1);
  expect(readdirSync(to).filter((name) => name.endsWith('.part'))).toEqual([]);
});
