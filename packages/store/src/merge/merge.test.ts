import { cpSync, existsSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, onTestFinished, test } from 'vitest';
import { channelsHash } from '../channels-hash.ts';
import { Database } from '../driver.ts';
import type { Book } from '../model.ts';
import { openBook } from '../open-book.ts';
import { originalPath } from '../originals.ts';
import { databaseFile } from '../places.ts';
import { importedFile } from '../testing/imported-file.ts';
import { temporaryFolder } from '../testing/temporary-folder.ts';
import { combination, engine, fileOf, pull, trial } from '../testing/things.ts';
import { mergeBooks } from './merge-books.ts';

const GO = { dryRun: false };

async function open(folder = temporaryFolder(), name = 'Shop'): Promise<Book> {
  const book = await openBook(folder, { create: { name } });
  onTestFinished(() => book.close());
  return book;
}

/** A copy of a closed book, as on another machine. */
async function copyOf(book: Book): Promise<Book> {
  await book.close();
  const folder = temporaryFolder();
  cpSync(book.folder, folder, { recursive: true });
  return open(folder);
}

const cell = (id: string, name: string) => ({
  id,
  name,
  brake: 'water brake',
  altitude: null,
  momentOfInertia: null,
  instruments: [],
  notes: '',
});

/** All of a book that a merge may change. */
async function stateOf(book: Book) {
  const { info: _, ...rest } = await book.contents();
  return rest;
}

describe('a copy went to another machine and both were worked on', () => {
  async function parted(): Promise<{ shop: Book; laptop: Book }> {
    const first = await open();
    await first.addEngine(engine);
    await first.addCombination({ ...combination('base'), packageIds: [] });
    await first.addPulls([pull('common'), pull('other')]);
    await first.addTrial(
      trial('t', { pulls: [{ pullId: 'common', key: 'A', role: 'counted', reason: null }] }),
    );
    const laptop = await copyOf(first);
    return { shop: await open(first.folder), laptop };
  }

  test('new things of both are there, with their log, though both went on counting from the same number', async () => {
    const { shop, laptop } = await parted();
    await shop.addPulls([pull('at the shop')]);
    const { file, bytes, pulls } = importedFile('at the track');
    await laptop.addFileWithPulls(file, bytes, pulls);
    const report = await mergeBooks(shop.folder, laptop.folder, GO);
    expect(report).toMatchObject({
      added: { file: 1, pull: 2 },
      taken: [],
      conflicts: [],
      renamed: [],
      damaged: [],
    });
    const after = await shop.contents();
    expect(after.pulls.map(({ id }) => id)).toEqual([
      'common',
      'other',
      'at the shop',
      ...pulls.map(({ id }) => id),
    ]);
    expect(after.pulls.slice(-2).map((one) => channelsHash(one.channels))).toEqual(
      pulls.map((one) => channelsHash(one.channels)),
    );
    expect(new Uint8Array(await shop.original(file.hash))).toEqual(bytes);
    const subjects = after.log.map(({ subject }) => subject);
    for (const { id } of pulls) expect(subjects).toContain(`pull ${id}`);
    expect(new Set(after.log.map(({ uid }) => uid)).size).toBe(after.log.length);
    expect(after.log.at(-1)).toMatchObject({ act: 'books merged' });
  });

  test('what only one changed is taken from that one, in either direction', async () => {
    const { shop, laptop } = await parted();
    await laptop.amendPull('common', { cell: 'Cell 2' }, 'it was the other');
    await shop.amendPull('other', { operator: 'me' }, 'noted');
    await laptop.changeTrial(trial('t', { remark: 'On the small pulley.' }), '');
    const report = await mergeBooks(shop.folder, laptop.folder, GO);
    expect(report.taken.map(({ kind, id }) => `${kind} ${id}`)).toEqual(['pull common', 'trial t']);
    expect(report.conflicts).toEqual([]);
    expect(await shop.pull('common')).toMatchObject({ cell: 'Cell 2' });
    expect(await shop.pull('other')).toMatchObject({ operator: 'me' });
    expect(await shop.trial('t')).toMatchObject({ remark: 'On the small pulley.', pulls: [] });
    await mergeBooks(laptop.folder, shop.folder, GO);
    expect(await laptop.pull('other')).toMatchObject({ operator: 'me' });
    expect(await stateOf(laptop)).toMatchObject({
      pulls: (await shop.contents()).pulls,
      trials: await shop.trials(),
    });
  });

  test('what both changed stays as it is here, is told field by field, and theirs is in the log', async () => {
    const { shop, laptop } = await parted();
    await shop.amendPull('common', { cell: 'Cell 1', operator: 'me' }, 'a');
    await laptop.amendPull('common', { cell: 'Cell 2', operator: 'me' }, 'b');
    const report = await mergeBooks(shop.folder, laptop.folder, GO);
    expect(report.conflicts).toEqual([
      {
        kind: 'pull',
        id: 'common',
        name: 'Pull common',
        why: 'both changed it',
        fields: [{ field: 'cell', ours: 'Cell 1', theirs: 'Cell 2' }],
      },
    ]);
    expect(await shop.pull('common')).toMatchObject({ cell: 'Cell 1' });
    const entry = (await shop.log()).find(({ act }) => act === 'kept from a merge');
    expect(entry).toMatchObject({
      subject: 'pull common',
      before: { cell: 'Cell 1' },
      after: { cell: 'Cell 2' },
    });
    // The other book learns of it and follows, since ours knows both.
    expect((await mergeBooks(laptop.folder, shop.folder, GO)).conflicts).toEqual([]);
    expect(await laptop.pull('common')).toMatchObject({ cell: 'Cell 1' });
  });

  test('what was withdrawn there is withdrawn here, and what was brought back there is back here', async () => {
    const { shop, laptop } = await parted();
    const hidden = async (book: Book) =>
      (await book.outline()).withdrawn.map(({ kind, id }) => `${kind} ${id}`);
    await laptop.addPulls([pull('mistake')]);
    const [undone] = await laptop.undo(null);
    await mergeBooks(shop.folder, laptop.folder, GO);
    expect(await hidden(shop)).toEqual(['pull mistake']);
    expect((await shop.pullNames()).map(({ id }) => id)).not.toContain('mistake');
    await laptop.undo(undone!.uid);
    expect(await hidden(laptop)).toEqual([]);
    await mergeBooks(shop.folder, laptop.folder, GO);
    expect(await hidden(shop)).toEqual([]);
    expect((await shop.pullNames()).map(({ id }) => id)).toContain('mistake');
    // Withdrawn here later than it was seen there, it stays so.
    const back = (await shop.log()).findLast(({ subject }) => subject === 'pull mistake');
    await shop.undo(back!.uid);
    await mergeBooks(shop.folder, laptop.folder, GO);
    expect(await hidden(shop)).toEqual(['pull mistake']);
  });

  test('a cell that was renamed there is renamed here, and our pulls follow it', async () => {
    const { shop: first } = await parted();
    await first.addCell(cell('c', 'Cell 1'));
    await first.amendPull('common', { cell: 'Cell 1' }, '');
    const laptop = await copyOf(first);
    const shop = await open(first.folder);
    await shop.addPulls([pull('only here', { cell: 'Cell 1' })]);
    await laptop.changeCell(cell('c', 'North cell'), 'there are two now');
    await mergeBooks(shop.folder, laptop.folder, GO);
    expect(await shop.cells()).toEqual([cell('c', 'North cell')]);
    for (const id of ['common', 'only here'])
      expect(await shop.pull(id)).toMatchObject({ cell: 'North cell' });
  });

  test('merging once more changes nothing; a dry run neither, and says the same', async () => {
    const { shop, laptop } = await parted();
    await shop.amendPull('common', { cell: 'Cell 1' }, 'a');
    await laptop.amendPull('common', { cell: 'Cell 2' }, 'b');
    const { file, bytes, pulls } = importedFile('x');
    await laptop.addFileWithPulls(file, bytes, pulls);
    const before = await stateOf(shop);
    const dry = await mergeBooks(shop.folder, laptop.folder, { dryRun: true });
    expect(await stateOf(shop)).toEqual(before);
    expect(existsSync(originalPath(shop.folder, file.hash))).toBe(false);
    const real = await mergeBooks(shop.folder, laptop.folder, GO);
    expect({ ...real, dryRun: true }).toEqual(dry);
    const after = await stateOf(shop);
    const again = await mergeBooks(shop.folder, laptop.folder, GO);
    expect(again).toMatchObject({ added: {}, taken: [], conflicts: [], logEntries: 0 });
    expect(await stateOf(shop)).toEqual(after);
    expect(readdirSync(shop.folder).filter((name) => name.startsWith('merge-'))).toEqual([]);
  });
});

describe('two books that never met', () => {
  test('an engine and a cell of a name that is here say where they are from, and their pulls follow', async () => {
    const shop = await open();
    const friend = await open(temporaryFolder(), 'Friend');
    await shop.addEngine(engine);
    await shop.addCell(cell('our cell', 'Cell 1'));
    await shop.addPulls([pull('ours', { cell: 'Cell 1' })]);
    await friend.addEngine({ ...engine, id: 'their engine' });
    await friend.addCell(cell('their cell', 'cell 1'));
    await friend.addPulls([pull('theirs', { cell: 'Cell 1' })]);
    const report = await mergeBooks(shop.folder, friend.folder, GO);
    expect(report.renamed).toEqual([
      { kind: 'engine', id: 'their engine', from: 'Six', to: 'Six (from Friend)' },
      { kind: 'cell', id: 'their cell', from: 'cell 1', to: 'cell 1 (from Friend)' },
    ]);
    expect(await shop.pull('ours')).toMatchObject({ cell: 'Cell 1' });
    expect(await shop.pull('theirs')).toMatchObject({ cell: 'cell 1 (from Friend)' });
    const after = await stateOf(shop);
    await mergeBooks(shop.folder, friend.folder, GO);
    expect(await stateOf(shop)).toEqual(after);
  });

  test('the same bytes in both: one pull, ours; their trial refers to it, and what they said of it is kept', async () => {
    const shop = await open();
    const friend = await open(temporaryFolder(), 'Friend');
    const { file, bytes } = fileOf('rpm,torque\n2000,300\n');
    await shop.addFileWithPulls(file, bytes, [pull('ours', { fileHash: file.hash })]);
    await friend.addFileWithPulls({ ...file, name: 'copy.csv' }, bytes, [
      pull('theirs', { fileHash: file.hash, operator: 'friend' }),
    ]);
    await friend.addTrial(
      trial('t', { pulls: [{ pullId: 'theirs', key: 'A', role: 'counted', reason: null }] }),
    );
    const report = await mergeBooks(shop.folder, friend.folder, GO);
    expect(report.samePulls).toEqual([{ theirs: 'theirs', ours: 'ours', name: 'Pull ours' }]);
    expect(report.conflicts[0]).toMatchObject({ why: 'same file in both', id: 'ours' });
    expect(report.conflicts[0]!.fields).toContainEqual({ field: 'operator', ours: null, theirs: 'friend' });
    expect((await shop.contents()).pulls.map(({ id }) => id)).toEqual(['ours']);
    expect((await shop.trial('t'))!.pulls[0]).toMatchObject({ pullId: 'ours' });
    const after = await stateOf(shop);
    expect((await mergeBooks(shop.folder, friend.folder, GO)).conflicts).toEqual([]);
    expect(await stateOf(shop)).toEqual(after);
  });

  test('of the other nothing is altered; its lost originals and damaged curves are told', async () => {
    const shop = await open();
    const friend = await open(temporaryFolder(), 'Friend');
    const { file, bytes, pulls } = importedFile('gone');
    await friend.addFileWithPulls(file, bytes, pulls);
    const altered = importedFile('altered');
    await friend.addFileWithPulls(altered.file, altered.bytes, altered.pulls);
    await friend.addPulls([pull('bad'), pull('good')]);
    await friend.addTrial(
      trial('t', {
        pulls: ['bad', 'good'].map((pullId) => ({ pullId, key: 'A', role: 'counted', reason: null })),
      }),
    );
    await friend.close();
    rmSync(originalPath(friend.folder, file.hash));
    writeFileSync(originalPath(friend.folder, altered.file.hash), 'other bytes');
    const database = new Database(databaseFile(friend.folder));
    database.exec(
      `drop trigger channelIsNotAltered; update channel set samples = zeroblob(8 * count) where pullId = 'bad' and place = 1`,
    );
    database.close();
    const before = readFileSync(databaseFile(friend.folder));
    const report = await mergeBooks(shop.folder, friend.folder, GO);
    expect(readFileSync(databaseFile(friend.folder)).equals(before)).toBe(true);
    expect(report.missingOriginals).toEqual([file, altered.file].map(({ hash, name }) => ({ hash, name })));
    expect(existsSync(originalPath(shop.folder, altered.file.hash))).toBe(false);
    expect(report.damaged).toEqual([{ id: 'bad', name: 'Pull bad' }]);
    const after = await shop.contents();
    expect(after.pulls.map(({ id }) => id).sort()).toEqual([
      'altered/0',
      'altered/1',
      'gone/0',
      'gone/1',
      'good',
    ]);
    expect(after.trials[0]!.pulls.map(({ pullId }) => pullId)).toEqual(['good']);
  });

  test('refused: itself, a folder without a book', async () => {
    const shop = await open();
    await expect(mergeBooks(shop.folder, shop.folder, GO)).rejects.toMatchObject({ code: 'exists' });
    await expect(mergeBooks(shop.folder, temporaryFolder(), GO)).rejects.toMatchObject({ code: 'missing' });
  });
});

/** One thing that is done to one of two copies of a book. */
type Step = { book: 0 | 1; act: 'pull' | 'amend' | 'import' | 'trial' | 'cell'; which: number };
const step = fc.record<Step>({
  book: fc.constantFrom(0, 1),
  act: fc.constantFrom('pull', 'amend', 'import', 'trial', 'cell'),
  which: fc.integer({ min: 0, max: 3 }),
});

async function doStep(book: Book, { act, which, book: side }: Step, number: number): Promise<void> {
  if (act === 'pull') await book.addPulls([pull(`pull ${side} ${number}`)]);
  if (act === 'amend') await book.amendPull('common', { cell: `Cell ${side} ${which}` }, `step ${number}`);
  if (act === 'cell')
    await book.addCell(cell(`cell ${side} ${number}`, `Cell ${number % 2}-${side}-${number}`));
  if (act === 'trial')
    await book.changeTrial(
      trial('t', {
        remark: `${side} ${number}`,
        pulls: [{ pullId: 'common', key: 'A', role: 'counted', reason: null }],
      }),
      '',
    );
  if (act === 'import') {
    const { file, bytes } = fileOf(`rpm,torque\n2000,${which}\n`, `file ${which}`);
    if (await book.file(file.hash)) return;
    await book.addFileWithPulls(file, bytes, [pull(`from ${side} ${number}`, { fileHash: file.hash })]);
  }
}

test('whatever was done to two copies: nothing is lost, both directions hold the same things, twice is once', async () => {
  await fc.assert(
    fc.asyncProperty(fc.array(step, { minLength: 1, maxLength: 12 }), async (steps) => {
      const first = await openBook(temporaryFolder(), { create: { name: 'Shop' } });
      await first.addPulls([pull('common')]);
      await first.addTrial(trial('t'));
      await first.close();
      const folders = [temporaryFolder(), temporaryFolder()] as const;
      for (const folder of folders) cpSync(first.folder, folder, { recursive: true });
      const books = [await openBook(folders[0]), await openBook(folders[1])] as const;
      for (const [number, one] of steps.entries()) await doStep(books[one.book], one, number);
      const before = [await stateOf(books[0]), await stateOf(books[1])] as const;
      const forward = temporaryFolder();
      await books[0].close();
      await books[1].close();
      cpSync(folders[0], forward, { recursive: true });
      await mergeBooks(forward, folders[1], GO);
      await mergeBooks(folders[1], folders[0], GO);
      const merged = [await openBook(forward), await openBook(folders[1])] as const;
      const [ab, ba] = [await stateOf(merged[0]), await stateOf(merged[1])];
      const curves = (state: typeof ab) =>
        state.pulls.map((one) => `${one.fileHash ?? one.id} ${channelsHash(one.channels)}`).sort();
      const ids = (list: { id: string }[]) => list.map(({ id }) => id).sort();
      expect(curves(ab)).toEqual(curves(ba));
      expect(ids(ab.cells)).toEqual(ids(ba.cells));
      expect(ids(ab.trials)).toEqual(ids(ba.trials));
      expect(ab.files.map(({ hash }) => hash).sort()).toEqual(ba.files.map(({ hash }) => hash).sort());
      for (const state of before) {
        expect(curves(ab)).toEqual(expect.arrayContaining(curves(state)));
        // Every word anybody wrote is in the book or in its log.
        const all = JSON.stringify([
          ab.pulls.map(({ channels: _, ...head }) => head),
          ab.trials,
          ab.cells,
          ab.log,
        ]);
        for (const { cell: where } of state.pulls) if (where !== null) expect(all).toContain(where);
        for (const { remark } of state.trials) expect(all).toContain(JSON.stringify(remark));
      }
      await merged[0].close();
      await mergeBooks(forward, folders[1], GO);
      const again = await openBook(forward);
      const once = await stateOf(again);
      await again.close();
      await mergeBooks(forward, folders[1], GO);
      const last = await openBook(forward);
      expect(await stateOf(last)).toEqual(once);
      await last.close();
      await merged[1].close();
    }),
    { seed: 5, numRuns: 12 },
  );
});
