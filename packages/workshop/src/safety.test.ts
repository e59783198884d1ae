import { cp, mkdtemp, open, readFile, rm, stat } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { openBook } from '@pullbook/store';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { backUp, backUpIfDue, backupState } from './backup-book.ts';
import { makeDemoBook } from './demo-book.ts';
import { exportBook } from './export-book.ts';
import { mergeIntoBook } from './merge-books.ts';
import { faultOfBook, putRescueAway, rescueBook, rescueLines, rescueToTell } from './rescue-book.ts';
import { restoreBook } from './restore-book.ts';

const NOW = new Date('2026-03-14T10:00:00.000Z');
let parent = '';
let sound = '';
beforeAll(async () => {
  parent = await mkdtemp(join(tmpdir(), 'pullbook-safety-'));
  sound = join(parent, 'sound');
  await makeDemoBook(sound);
});
afterAll(() => rm(parent, { recursive: true, force: true }));

async function copyOfDemo(name: string): Promise<string> {
  const folder = join(parent, name);
  await cp(sound, folder, { recursive: true });
  return folder;
}

async function withBookIn<T>(
  folder: string,
  act: (book: Awaited<ReturnType<typeof openBook>>) => Promise<T>,
): Promise<T> {
  const book = await openBook(folder);
  try {
    return await act(book);
  } finally {
    await book.close();
  }
}

const contentsOf = (folder: string) => withBookIn(folder, (book) => book.contents());

test('exported and restored, a book is the same, withdrawn things too', async () => {
  const folder = await copyOfDemo('exported');
  const before = await withBookIn(folder, async (book) => {
    const { id: free } = (await book.pullHeads()).find(({ form }) => form === 'summary')!;
    await book.amendPull(free, { audience: { who: 'shop', notBefore: null } }, '');
    await book.addPulls([{ ...(await book.pull(free))!, id: 'taken back' }]);
    await book.undo(null);
    expect((await exportBook(book, join(parent, 'export'))).ok).toBe(true);
    return book.contents();
  });
  expect(before.withdrawn).toMatchObject([{ kind: 'pull', id: 'taken back' }]);
  const restored = await restoreBook(join(parent, 'export'), join(parent, 'restored'));
  expect(restored).toMatchObject({ ok: true, value: { from: 'export', pulls: before.pulls.length } });
  expect(await contentsOf(join(parent, 'restored'))).toEqual(before);
});

describe('an export for others', () => {
  test('leaves out what they may not see, says how much, and reads back', async () => {
    const folder = await copyOfDemo('private');
    const all = await withBookIn(folder, async (book) => {
      const trial = (await book.trials())[0]!;
      const [closed] = trial.pulls;
      await book.amendPull(closed!.pullId, { audience: { who: 'customer', notBefore: null } }, 'his engine');
      for (const reader of ['everyone', 'customer'] as const) {
        const written = await exportBook(book, join(parent, `for ${reader}`), { reader });
        const out = reader === 'everyone';
        expect(written).toMatchObject({
          ok: true,
          value: { privateThings: out ? 0 : 1, leftOut: { pulls: out ? 1 : 0 } },
        });
        if (out && written.ok) expect(written.value.leftOut.trials).toBeGreaterThan(0);
        const text = await readFile(join(parent, `for ${reader}`, 'book.json'), 'utf8');
        expect(text.includes(closed!.pullId)).toBe(!out);
        // Amendments with their reasons are the shop's own.
        expect(text).not.toContain('his engine');
      }
      return book.contents();
    });
    const back = await restoreBook(join(parent, 'for everyone'), join(parent, 'from everyone'));
    expect(back).toMatchObject({ ok: true, value: { pulls: all.pulls.length - 1 } });
  });
});

test('backed up when due, once a day; what goes wrong is told and nothing else stops', async () => {
  const folder = await copyOfDemo('daily');
  await withBookIn(folder, async (book) => {
    expect(await backUp(book, null, NOW)).toMatchObject({ ok: false });
    await backUpIfDue(book, NOW);
    expect(await backupState(book)).toMatchObject({ folder: null, last: null, trouble: null });
    const to = join(parent, 'backups');
    await book.changeSettings({ backupFolder: to });
    const hours = (count: number) => new Date(NOW.getTime() + count * 3_600_000);
    for (const at of [NOW, hours(1), hours(23), hours(25)]) await backUpIfDue(book, at);
    expect((await backupState(book)).last).toMatchObject({ folder: to, madeAt: hours(25).toISOString() });
    await book.changeSettings({ backupFolder: join(folder, 'inside') });
    await backUpIfDue(book, hours(60));
    expect((await backupState(book)).trouble).toContain('inside');
  });
  const restored = await restoreBook(join(parent, 'backups'), join(parent, 'from backup'), '2026-03-14');
  await withBookIn(folder, async (book) => {
    const later = (hour: number) => new Date(NOW.getTime() + (240 + hour) * 3_600_000);
    const all = await backUp(book, join(parent, 'backups'), later(0), { keepAll: true });
    expect(all).toMatchObject({ ok: true, value: { takenAway: [] } });
    // Of one week, Saturday and Sunday; ten days later its newest stands for both.
    const thinned = await backUp(book, join(parent, 'backups'), later(1));
    expect(thinned).toMatchObject({ ok: true, value: { takenAway: [NOW.toISOString()] } });
  });
  expect(restored).toMatchObject({ ok: true, value: { from: 'backup', madeAt: NOW.toISOString() } });
  const [pulls, before] = [
    (await contentsOf(join(parent, 'from backup'))).pulls,
    (await contentsOf(sound)).pulls,
  ];
  expect(pulls).toEqual(before);
});

describe('a damaged book', () => {
  test('curves come back from the imported files through their mappings, bit for bit; told until put away', async () => {
    const folder = await copyOfDemo('damaged');
    const before = await contentsOf(folder);
    const database = join(folder, 'book.sqlite');
    const bytes = await readFile(database);
    const handle = await open(database, 'r+');
    for (const { form, channels } of before.pulls) {
      const samples = channels[1] ? Buffer.from(channels[1].values.buffer).subarray(0, 64) : null;
      const at = form === 'curve' && samples ? bytes.indexOf(samples) : -1;
      if (at > 0) await handle.write(Buffer.alloc(8, 0x42), 0, 8, at);
    }
    await handle.close();
    expect(await faultOfBook(folder)).toContain('are not those that were stored');
    const report = await rescueBook(folder, NOW);
    expect(report.madeAgain.length).toBeGreaterThan(5);
    expect(report.lost).toEqual([]);
    expect(rescueLines(report).join('\n')).toContain('made again: pull');
    expect((await contentsOf(folder)).pulls).toEqual(before.pulls);
    expect(await faultOfBook(folder)).toBeNull();
    await withBookIn(folder, async (book) => {
      expect(await rescueToTell(book)).toEqual(report);
      await putRescueAway(book);
      expect(await rescueToTell(book)).toBeNull();
    });
  });

  test('a database that is gone: nothing is made over its originals in silence', async () => {
    const folder = await copyOfDemo('gone');
    await rm(join(folder, 'book.sqlite'));
    await expect(openBook(folder, { create: { name: 'New' } })).rejects.toMatchObject({
      code: 'damaged',
      message: expect.stringContaining('pullbook rescue'),
    });
    await expect(stat(join(folder, 'book.sqlite'))).rejects.toMatchObject({ code: 'ENOENT' });
  });
});

test('a merge says in words what needs an eye, and a book of strangers comes in whole', async () => {
  const [one, two] = [await copyOfDemo('one'), await copyOfDemo('two')];
  const [first] = (await contentsOf(one)).pulls;
  await withBookIn(one, (book) => book.amendPull(first!.id, { operator: 'me' }, 'a'));
  await withBookIn(two, (book) => book.amendPull(first!.id, { operator: 'you' }, 'b'));
  await withBookIn(one, async (book) => {
    const merged = await mergeIntoBook(book, two, { dryRun: false });
    expect(merged.remarks.map(({ code }) => code)).toEqual(['merge-conflict']);
    expect(merged.remarks[0]!.message).toContain('operator');
  });
  const empty = join(parent, 'empty');
  await (await openBook(empty, { create: { name: 'Empty' } })).close();
  await withBookIn(empty, async (book) => {
    const merged = await mergeIntoBook(book, sound, { dryRun: false });
    expect(merged.remarks.map(({ code }) => code)).toEqual(['merge-invented']);
    const { pulls, trials, files } = await book.contents();
    const before = await contentsOf(sound);
    expect([pulls, trials, files]).toEqual([before.pulls, before.trials, before.files]);
  });
});
