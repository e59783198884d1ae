import { expect, onTestFinished, test } from 'vitest';
import { Database } from './driver.ts';
import { mergeBooks } from './merge/merge-books.ts';
import type { Book } from './model.ts';
import { openBook } from './open-book.ts';
import { databaseFile } from './places.ts';
import { rescueBook } from './rescue/rescue-book.ts';
import { temporaryFolder } from './testing/temporary-folder.ts';
import { AT, fileOf, orderOf, publication, pull, trial } from './testing/things.ts';

const LINK = { where: 'club magazine, May, page 12', day: '2026-05-01', note: '' };

async function bookWith(...trialIds: string[]): Promise<Book> {
  const book = await openBook(temporaryFolder(), { create: { name: 'Shop' } });
  onTestFinished(() => book.close());
  for (const id of trialIds) await book.addTrial(trial(id));
  return book;
}

test('publications come back bit for bit, of the trials asked for, the last first', async () => {
  const book = await bookWith('one', 'two');
  const first = publication('first', 'one', { pullIds: ['p', 'q'], privateToo: true, links: [LINK] });
  const last = publication('last', 'two', { kinds: [], files: [], figures: [] });
  await book.addPublication(first);
  await book.addPublication(last);
  expect(await book.publications()).toEqual([last, first]);
  expect(await book.publications(['one'])).toEqual([first]);
  expect(await book.publications([])).toEqual([]);
  expect((await book.outline()).publications).toEqual([first, last]);
  expect(await book.subjects(['publication first'])).toEqual(
    new Map([['publication first', { name: first.question, isThere: true }]]),
  );
});

test('nothing of a publication is altered but its links; those are put back by an undo', async () => {
  const book = await bookWith('one');
  await book.addPublication(publication('p', 'one'));
  const stamp = await book.stamp('publication p');
  await book.changeLinks('p', [LINK], 'printed', stamp);
  expect((await book.publications())[0]!.links).toEqual([LINK]);
  expect((await book.log()).at(-1)).toMatchObject({ act: 'publication changed', before: { links: [] } });
  await expect(book.changeLinks('p', [], 'again', stamp)).rejects.toMatchObject({
    code: 'changed meanwhile',
  });
  await expect(book.changeLinks('nothing', [], '')).rejects.toThrow('no publication nothing');
  await book.undo(null);
  expect((await book.publications())[0]!.links).toEqual([]);

  const database = new Database(databaseFile(book.folder));
  onTestFinished(() => void database.close());
  for (const column of ['sentence', 'figures', 'pullIds', 'files', 'at'])
    expect(() => database.exec(`update publication set ${column} = ${column}`)).toThrow('never altered');
  expect(() => database.exec('delete from publication')).toThrow('never altered');
});

test('a publication is withdrawn by undoing it, and comes back', async () => {
  const book = await bookWith('one');
  await book.addPublication(publication('p', 'one'));
  const [undone] = await book.undo(null);
  expect(await book.publications()).toEqual([]);
  expect((await book.outline()).publications).toHaveLength(1);
  await book.undo(undone!.uid);
  expect(await book.publications()).toHaveLength(1);
});

test('a figure that is no number is refused, and so is a publication of no trial', async () => {
  const book = await bookWith('one');
  const { figures } = publication('p', 'one');
  const spoiled = [{ ...figures[0]!, value: Number.NaN }];
  await expect(book.addPublication(publication('p', 'one', { figures: spoiled }))).rejects.toThrow(
    'no number',
  );
  await expect(book.addPublication(publication('p', 'nowhere'))).rejects.toThrow(/FOREIGN KEY/i);
  expect(await book.publications()).toEqual([]);
});

test('a running order is kept with the trial, changed and put back', async () => {
  const book = await bookWith();
  await book.addTrial(trial('one', { runningOrder: orderOf('What we asked') }));
  const before = (await book.trial('one'))!;
  expect(before.runningOrder).toEqual(orderOf('What we asked'));
  await book.changeTrial({ ...before, runningOrder: null }, 'as worked out');
  expect('runningOrder' in (await book.trial('one'))!).toBe(false);
  await book.undo(null);
  expect(await book.trial('one')).toEqual(before);
});

test('merged, a publication rests on the pulls by the ids they have here, and links that are later are taken', async () => {
  const { file, bytes } = fileOf('one run');
  const [ours, theirs] = [await bookWith('ours'), await bookWith('theirs')];
  await ours.addFileWithPulls(file, bytes, [pull('here', { name: 'Run', fileHash: file.hash })]);
  await theirs.addFileWithPulls(file, bytes, [pull('there', { name: 'Run', fileHash: file.hash })]);
  await theirs.addPublication(publication('p', 'theirs', { pullIds: ['there', 'long gone'] }));
  const merge = () => mergeBooks(ours.folder, theirs.folder, { dryRun: false });
  expect(await merge()).toMatchObject({ added: { publication: 1 }, conflicts: [] });
  expect((await ours.publications())[0]!.pullIds).toEqual(['here', 'long gone']);
  await theirs.changeLinks('p', [LINK], 'printed');
  expect(await merge()).toMatchObject({ taken: [{ kind: 'publication', id: 'p' }], conflicts: [] });
  expect((await ours.publications())[0]).toMatchObject({ links: [LINK], pullIds: ['here', 'long gone'] });
  await theirs.undo(null);
  await theirs.changeLinks('p', [], 'not printed after all');
  await ours.changeLinks('p', [LINK, LINK], 'twice');
  expect(await merge()).toMatchObject({ conflicts: [{ kind: 'publication', fields: [{ field: 'links' }] }] });
  expect((await ours.publications())[0]!.links).toEqual([LINK, LINK]);
});

test('a rescue keeps publications when nothing leads to their pages any more', async () => {
  const book = await openBook(temporaryFolder(), { create: { name: 'Shop' } });
  await book.addTrial(trial('one', { runningOrder: orderOf('Asked') }));
  const many = Array.from({ length: 40 }, (_, at) =>
    publication(`p${at}`, 'one', { sentence: `Said ${at}.` }),
  );
  for (const one of many) await book.addPublication(one);
  await book.close();
  // The schema's own line is spoiled: pages of the table are found by the shape of what is on them.
  const database = new Database(databaseFile(book.folder));
  database.unsafeMode(true);
  database.pragma('writable_schema = on');
  database.exec(`update sqlite_schema set rootpage = 0 where name = 'publication';
    drop trigger publicationIsNotDeleted;`);
  database.close();
  const report = await rescueBook(book.folder, () => null, new Date(AT));
  expect(report.kept).toMatchObject({ publications: 40, trials: 1 });
  const after = await openBook(book.folder);
  onTestFinished(() => after.close());
  expect((await after.publications()).reverse()).toEqual(many);
  expect((await after.trial('one'))!.runningOrder).toEqual(orderOf('Asked'));
});
