import { expect, onTestFinished, test } from 'vitest';
import type { Book, ListedPull, PullQuery } from './model.ts';
import { openBook } from './open-book.ts';
import { temporaryFolder } from './testing/temporary-folder.ts';
import { combination, engine, pull, trial } from './testing/things.ts';

const listed = (
  pullId: string,
  words: string,
  peakPower: number | null,
  boosted: boolean | null,
): ListedPull => ({
  pullId,
  key: 'k',
  words,
  figures: { pullId },
  peakPower,
  peakTorque: null,
  boosted,
  digest: null,
});

async function threePulls(): Promise<Book> {
  const book = await openBook(temporaryFolder(), { create: { name: 'Shop' } });
  onTestFinished(() => book.close());
  await book.addEngine(engine);
  await book.addCombination({ ...combination('base'), packageIds: [] });
  await book.addPulls([
    pull('one', { combinationId: 'base', cell: 'North', recordedAt: '2026-03-14T23:30:00+01:00' }),
    pull('two', { outcome: 'aborted', recordedAt: null }),
    pull('three', { cell: 'South', invented: false, recordedAt: '2026-03-16' }),
  ]);
  const { asOf } = await book.unlisted('k', 10);
  await book.keepListed(
    [
      listed('one', 'pull one base cam', 300_000, false),
      listed('three', 'pull three große nocke', 400_000, null),
    ],
    asOf,
  );
  return book;
}

const FOUND: [string, Partial<PullQuery>, string[]][] = [
  ['everything, added last first', {}, ['three', 'two', 'one']],
  ['by all words, parts of words too', { words: ['bas', 'cam'] }, ['one']],
  ['words of other letters', { words: ['große'] }, ['three']],
  ['one not listed yet, by its name', { words: ['two'] }, ['two']],
  ['a combination', { combinationIds: ['base'] }, ['one']],
  ['none', { withoutCombination: true }, ['three', 'two']],
  ['an engine', { engineId: 'engine' }, ['one']],
  ['a cell', { cell: 'South' }, ['three']],
  ['days as in the cell', { fromDay: '2026-03-14', toDay: '2026-03-14' }, ['one']],
  ['power', { powerFrom: 350_000 }, ['three']],
  ['not boosted', { boosted: false }, ['one']],
  ['boost unknown', { boosted: 'unknown' }, ['three', 'two']],
  ['aborted', { outcome: 'aborted' }, ['two']],
  ['not invented', { invented: false }, ['three']],
  ['most power first, unknown last', { sort: 'power' }, ['three', 'one', 'two']],
  ['by name', { sort: 'name' }, ['one', 'three', 'two']],
  ['the second page of two', { offset: 2, limit: 2 }, ['one']],
];

test.each(FOUND)('finds %s', async (_what, asked, ids) => {
  const book = await threePulls();
  const found = await book.findPulls({ sort: 'newest', offset: 0, limit: 50, ...asked });
  expect(found.pulls.map(({ head }) => head.id)).toEqual(ids);
  expect(found.all).toBe(3);
  expect(found.total).toBe(asked.limit === undefined ? ids.length : 3);
});

test('finds those in a trial and those in none; a withdrawn trial is none', async () => {
  const book = await threePulls();
  await book.addTrial(
    trial('t', {
      combinations: [{ key: 'A', combinationId: 'base', shortName: '' }],
      pulls: [{ pullId: 'one', key: 'A', role: 'counted', reason: null }],
    }),
  );
  const idsWith = async (inTrial: boolean) =>
    (await book.findPulls({ sort: 'newest', offset: 0, limit: 50, inTrial })).pulls.map(
      ({ head }) => head.id,
    );
  expect(await idsWith(true)).toEqual(['one']);
  expect(await idsWith(false)).toEqual(['three', 'two']);
  await book.undo(null);
  expect(await idsWith(true)).toEqual([]);
});

test('what is remembered goes where what it rests on was changed: the pull, its combination, its engine', async () => {
  const book = await threePulls();
  const remembered = async () => !(await book.unlisted('k', 10)).ids.includes('one');
  const changes: (() => Promise<unknown>)[] = [
    () => book.amendPull('one', { name: 'Other' }, 'named'),
    () => book.amendCombination('base', combination('base', '97 mm').sheet, 'measured'),
    () => book.changeEngine({ ...engine, name: 'Eight' }, 'renamed'),
    () => book.undo(null),
  ];
  for (const change of changes) {
    expect(await remembered()).toBe(true);
    await change();
    expect(await remembered()).toBe(false);
    const { asOf } = await book.unlisted('k', 10);
    await book.keepListed([listed('one', 'again', null, null)], asOf);
  }
});

test('what was made from an older state is not kept', async () => {
  const book = await threePulls();
  const { ids, asOf } = await book.unlisted('k', 10);
  expect(ids).toEqual(['two']);
  await book.amendPull('two', { name: 'Other' }, 'named meanwhile');
  expect(await book.keepListed([listed('two', 'pull two', null, null)], asOf)).toBe(false);
  expect((await book.unlisted('k', 10)).ids).toEqual(['two']);
});

test('nothing is remembered of another key', async () => {
  const book = await threePulls();
  expect((await book.unlisted('other', 10)).ids).toEqual(['three', 'two', 'one']);
});
