import { execFileSync, spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { chmodSync, readdirSync, readFileSync, rmSync, truncateSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, onTestFinished, test } from 'vitest';
import { Database } from './driver.ts';
import { insertBookRow, openBook, openConnection } from './open-book.ts';
import { originalPath } from './originals.ts';
import { databaseFile } from './places.ts';
import { bookOver } from './sqlite-book.ts';
import { asProgram } from './testing/as-program.ts';
import { otherProgramHolding } from './testing/other-program.ts';
import { temporaryFolder } from './testing/temporary-folder.ts';
import { channel, engine, fileOf, pull } from './testing/things.ts';

const { file, bytes } = fileOf('rpm,torque\n2000,300\n');

/** A closed book with a file and its pull. */
async function makeBook(folder = temporaryFolder()): Promise<string> {
  const book = await openBook(folder, { create: { name: 'Test book' } });
  await book.addEngine(engine);
  await book.addFileWithPulls(file, bytes, [pull('stored', { fileHash: file.hash })]);
  await book.close();
  return folder;
}

/** Hash of every file under a folder: what is on the disk, whoever asks. */
function onDisk(folder: string): Record<string, string> {
  const names = readdirSync(folder, { recursive: true, withFileTypes: true }).filter((entry) =>
    entry.isFile(),
  );
  return Object.fromEntries(
    names.map(({ parentPath, name }) => {
      const path = join(parentPath, name);
      return [path, createHash('sha256').update(readFileSync(path)).digest('hex')];
    }),
  );
}

const bigPull = (id: string) =>
  pull(id, {
    channels: [
      channel(
        'torque',
        Float64Array.from({ length: 100_000 }, (_, index) => index),
      ),
    ],
  });

describe('missing', () => {
  test('a folder without a book, a folder that is not there: said, and nothing is made', async () => {
    const folder = temporaryFolder();
    await expect(openBook(folder)).rejects.toMatchObject({
      code: 'missing',
      message: expect.stringContaining(folder),
    });
    await expect(openBook(join(folder, 'sub'))).rejects.toMatchObject({ code: 'missing' });
    expect(readdirSync(folder)).toEqual([]);
  });

  test('a creation that was killed early is no book yet, and is finished by the next creation', async () => {
    const folder = temporaryFolder();
    writeFileSync(databaseFile(folder), '');
    await expect(openBook(folder)).rejects.toMatchObject({ code: 'missing' });
    const book = await openBook(folder, { create: { name: 'Second go' } });
    expect((await book.info()).name).toBe('Second go');
    await book.close();
  });

  test('an original that is gone is told by its path', async () => {
    const folder = await makeBook();
    rmSync(originalPath(folder, file.hash));
    const book = await openBook(folder);
    await expect(book.original(file.hash)).rejects.toMatchObject({
      code: 'damaged',
      message: expect.stringContaining(file.hash),
    });
    await book.close();
  });
});

describe('not a book, or a newer one', () => {
  test('a database of another program is refused and left as it is', async () => {
    const folder = temporaryFolder();
    const foreign = new Database(databaseFile(folder));
    foreign.exec('create table parts (id integer primary key)');
    foreign.close();
    const before = onDisk(folder);
    for (const create of [null, { name: 'New' }]) {
      await expect(openBook(folder, { create })).rejects.toMatchObject({
        code: 'not a book',
        message: expect.stringContaining('book.sqlite'),
      });
    }
    expect(onDisk(folder)).toEqual({ ...before });
  });

  test('a newer schema is refused and left as it is', async () => {
    const folder = await makeBook();
    const database = new Database(databaseFile(folder));
    database.pragma('user_version = 99');
    database.close();
    const before = onDisk(folder);
    await expect(openBook(folder)).rejects.toMatchObject({
      code: 'newer',
      message: expect.stringContaining('99'),
    });
    expect(onDisk(folder)).toEqual(before);
  });
});

describe('locked', () => {
  test('another program writes: reading goes on, writing says so after the wait, and nothing is changed', async () => {
    const folder = await makeBook();
    const other = await otherProgramHolding(folder, 'begin immediate');
    const book = await openBook(folder, { lockWaitMs: 150 });
    onTestFinished(() => book.close());
    expect((await book.pullHeads()).map(({ id }) => id)).toEqual(['stored']);
    await expect(book.addEngine({ ...engine, id: 'second' })).rejects.toMatchObject({
      code: 'locked',
      message: expect.stringMatching(/another program.*try again/),
    });
    const more = fileOf('rpm,torque\n2000,301\n');
    await expect(book.addFileWithPulls(more.file, more.bytes, [])).rejects.toMatchObject({ code: 'locked' });
    expect(Object.keys(onDisk(join(folder, 'originals')))).toEqual([originalPath(folder, file.hash)]);
    expect(await book.engines()).toEqual([engine]);
    other.release();
  });

  test('a lock that is given back in time is waited for', async () => {
    const folder = await makeBook();
    const other = await otherProgramHolding(folder, 'begin immediate');
    const book = await openBook(folder, { lockWaitMs: 20_000 });
    onTestFinished(() => book.close());
    const adding = book.addEngine({ ...engine, id: 'second' });
    expect((await book.engines()).length).toBe(1);
    other.release();
    await adding;
    expect((await book.engines()).length).toBe(2);
  });

  test('a book held for one program alone cannot be opened', async () => {
    const folder = await makeBook();
    await otherProgramHolding(
      folder,
      'pragma locking_mode = exclusive; begin immediate; create table x (y); commit',
    );
    await expect(openBook(folder, { lockWaitMs: 100 })).rejects.toMatchObject({ code: 'locked' });
  });
});

describe('a full disk', () => {
  test('at the page limit: said, nothing stored is touched, and it goes on when there is room', async () => {
    const connection = await openConnection(temporaryFolder(), 100, (opened) =>
      insertBookRow(opened, { id: 'book', name: 'Test book', invented: true, createdAt: '2026-03-14' }),
    );
    const book = bookOver(connection);
    onTestFinished(() => book.close());
    await book.addPulls([pull('stored')]);
    const before = await book.contents();
    const pages = connection.database.pragma('page_count', { simple: true }) as number;
    connection.database.pragma(`max_page_count = ${pages + 3}`);

    await expect(book.addPulls([bigPull('big')])).rejects.toMatchObject({
      code: 'full',
      message: expect.stringMatching(/took no more.*Make room/),
    });
    const fromFile = { ...bigPull('big'), fileHash: file.hash };
    await expect(book.addFileWithPulls(file, bytes, [fromFile])).rejects.toMatchObject({ code: 'full' });
    expect(await book.contents()).toEqual(before);
    expect(onDisk(join(connection.folder, 'originals'))).toEqual({});

    connection.database.pragma('max_page_count = 1000000');
    await book.addFileWithPulls(file, bytes, [fromFile]);
    expect(await book.pull('big')).toEqual(fromFile);
  });

  test('on a real small disk, by the file or by the database', async (context) => {
    const small = temporaryFolder();
    // Only root may mount a disk; the page limit above stands for it elsewhere.
    const mounted = spawnSync('mount', ['-t', 'tmpfs', '-o', 'size=2m', 'tmpfs', small]).status === 0;
    if (!mounted) context.skip('no right to mount a small disk');
    onTestFinished(() => void spawnSync('umount', [small]));
    const folder = await makeBook(join(small, 'book'));
    const book = await openBook(folder);
    const before = await book.contents();
    const tooBig = fileOf('x'.repeat(3_000_000));
    await expect(book.addFileWithPulls(tooBig.file, tooBig.bytes, [])).rejects.toMatchObject({
      code: 'full',
    });
    const three = [bigPull('one'), bigPull('two'), bigPull('three')];
    await expect(book.addPulls(three)).rejects.toMatchObject({ code: 'full' });
    expect(await book.contents()).toEqual(before);
    expect(Object.keys(onDisk(join(folder, 'originals')))).toEqual([originalPath(folder, file.hash)]);
    await book.close();
    const again = await openBook(folder);
    expect(await again.contents()).toEqual(before);
    await again.addPulls([pull('fits')]);
    await again.close();
  });
});

describe('read-only', () => {
  /** What another program sees that has no right to write: as another user where this one is root. */
  function tryWithoutRights(folder: string, ...more: string[]): { code: string; message: string } {
    const printed = execFileSync(process.execPath, [...asProgram('try-book'), folder, ...more], {
      ...(process.getuid?.() === 0 ? { uid: 65_534, gid: 65_534 } : {}),
      encoding: 'utf8',
    });
    return JSON.parse(printed);
  }

  test.skipIf(process.platform === 'win32')('said, with what to do, and nothing is changed', async () => {
    const folder = await makeBook();
    const before = onDisk(folder);
    chmodSync(databaseFile(folder), 0o444);
    chmodSync(folder, 0o555);
    onTestFinished(() => chmodSync(folder, 0o755));
    expect(tryWithoutRights(folder)).toMatchObject({
      code: 'read-only',
      message: expect.stringMatching(/cannot be written.*copy the book/),
    });
    expect(tryWithoutRights(join(folder, 'new'), 'create')).toMatchObject({ code: 'read-only' });
    expect(onDisk(folder)).toEqual(before);
  });
});

describe('damaged', () => {
  test.each<[string, (path: string) => void]>([
    ['cut to its half', (path) => truncateSync(path, (readFileSync(path).length / 2) & ~4095)],
    ['cut in a page', (path) => truncateSync(path, 5000)],
    ['with its header overwritten', (path) => writeFileSync(path, Buffer.alloc(100, 0x58), { flag: 'r+' })],
    ['replaced by a text', (path) => writeFileSync(path, 'engine speed,torque\n'.repeat(1000))],
    ['with its pages overwritten', (path) => overwriteFrom(path, 4096)],
  ])('a database %s', async (_, damage) => {
    const folder = await makeBook();
    damage(databaseFile(folder));
    const before = onDisk(folder);
    await expect(readEverything(folder)).rejects.toMatchObject({
      code: 'damaged',
      message: expect.stringMatching(/damaged or not a book.*originals/),
    });
    expect(onDisk(folder)).toEqual(before);
  });

  test('an original with other bytes', async () => {
    const folder = await makeBook();
    writeFileSync(originalPath(folder, file.hash), 'rpm,torque\n2000,999\n');
    const book = await openBook(folder);
    await expect(book.original(file.hash)).rejects.toMatchObject({ code: 'damaged' });
    await book.close();
  });

  async function readEverything(folder: string): Promise<void> {
    const book = await openBook(folder);
    try {
      await book.contents();
    } finally {
      await book.close();
    }
  }

  function overwriteFrom(path: string, offset: number): void {
    const content = readFileSync(path);
    content.fill(0x58, offset);
    writeFileSync(path, content);
  }
});
