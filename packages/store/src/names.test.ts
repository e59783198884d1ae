import { expect, onTestFinished, test } from 'vitest';
import type { Book } from './model.ts';
import { openBook } from './open-book.ts';
import { temporaryFolder } from './testing/temporary-folder.ts';
import { combination, engine, pull, trial } from './testing/things.ts';

async function bookWith(...pulls: Parameters<typeof pull>[]): Promise<Book> {
  const now = () => new Date('2026-03-14T08:00:00Z');
  const book = await openBook(temporaryFolder(), { create: { name: 'Shop' }, now });
  onTestFinished(() => book.close());
  await book.addPulls(pulls.map((one) => pull(...one)));
  return book;
}

const idsOf = async (found: Promise<{ id: string }[]>) => (await found).map(({ id }) => id);

test('a thing is meant by its id, a beginning of it from four characters on, or its name', async () => {
  const book = await bookWith(
    ['abcd-1', { name: 'First' }],
    ['abcd-2', { name: 'SECOND' }],
    ['abc', { name: 'abcd' }],
    ['xyz9', { name: 'abc%' }],
  );
  expect(await idsOf(book.named('pull', 'abcd-1'))).toEqual(['abcd-1']);
  expect(await idsOf(book.named('pull', ' ABCD-1 '))).toEqual(['abcd-1']);
  expect(await idsOf(book.named('pull', 'abcd'))).toEqual(['abc', 'abcd-2', 'abcd-1']);
  expect(await idsOf(book.named('pull', 'abc'))).toEqual(['abc']);
  expect(await idsOf(book.named('pull', 'second'))).toEqual(['abcd-2']);
  expect(await idsOf(book.named('pull', 'abc%'))).toEqual(['xyz9']);
  expect(await idsOf(book.named('pull', 'xy'))).toEqual([]);
});

test('what was taken back is meant no more; a trial is meant by its question', async () => {
  const book = await bookWith(['abcd-1', { name: 'First' }]);
  await book.addEngine(engine);
  await book.addCombination({ ...combination('base'), packageIds: [] });
  await book.addTrial(trial('t', { question: 'Which cam?', pulls: [], combinations: [] }));
  expect(await idsOf(book.named('trial', 'which CAM?'))).toEqual(['t']);
  expect(await idsOf(book.named('engine', 'six'))).toEqual(['engine']);
  expect(await book.combinationNames()).toEqual([
    { id: 'base', name: 'Combination base', engineId: 'engine' },
  ]);
  await book.undo(null);
  expect(await idsOf(book.named('trial', 'which cam?'))).toEqual([]);
});

test('the pulls of a day: as recorded, else as added; of one cell, and only what is there', async () => {
  const book = await bookWith(
    ['one', { name: 'Pull 1', recordedAt: '2026-03-14T10:00:00+01:00', cell: 'Cell 1' }],
    ['two', { name: 'Pull 2', recordedAt: '2026-03-14', cell: 'Cell 2' }],
    ['old', { name: 'Old', recordedAt: '2026-03-13T23:59:00+01:00', cell: 'Cell 1' }],
    ['undated', { name: 'Undated', recordedAt: null, cell: 'Cell 1' }],
  );
  const sorted = async (day: string, cell: string | null) => (await book.pullNamesOfDay(day, cell)).sort();
  expect(await sorted('2026-03-14', 'Cell 1')).toEqual(['Pull 1', 'Undated']);
  expect(await sorted('2026-03-14', null)).toEqual(['Pull 1', 'Pull 2', 'Undated']);
  expect(await sorted('2026-03-13', null)).toEqual(['Old']);
  expect(await book.newestPull()).toMatchObject({ id: 'undated' });
  expect(await book.pullCells()).toEqual([
    { name: 'Cell 1', pulls: 3 },
    { name: 'Cell 2', pulls: 1 },
  ]);
  await book.addPulls([pull('last', { name: 'Last', recordedAt: '2026-03-13', cell: 'Cell 3' })]);
  await book.undo(null);
  expect(await book.newestPull()).toMatchObject({ id: 'undated' });
  expect((await book.pullCells()).map(({ name }) => name)).toEqual(['Cell 1', 'Cell 2']);
});
