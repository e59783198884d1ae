import { mkdirSync } from 'node:fs';
import { expect, onTestFinished, test } from 'vitest';
import { connect } from './connection.ts';
import { Database } from './driver.ts';
import { mergeBooks } from './merge/merge-books.ts';
import { APPLICATION_ID, NEWEST_SCHEMA } from './migrate.ts';
import { MIGRATIONS } from './migrations/index.ts';
import type { Book } from './model.ts';
import { insertBookRow, openBook } from './open-book.ts';
import { databaseFile, originalsFolder } from './places.ts';
import { rescueBook } from './rescue/rescue-book.ts';
import { answerOf, enquiry, planned, rungOf } from './testing/enquiries.ts';
import { temporaryFolder } from './testing/temporary-folder.ts';
import { AT, combination, engine, fileOf, kit, pull } from './testing/things.ts';

async function bookWith(...combinationIds: string[]): Promise<Book> {
  const book = await openBook(temporaryFolder(), { create: { name: 'Shop' } });
  onTestFinished(() => book.close());
  await book.addEngine(engine);
  await book.addPackage(kit);
  for (const id of combinationIds) await book.addCombination(combination(id));
  return book;
}

const CARD = { name: 'answer.png', hash: 'ab'.repeat(32), at: AT };

test('enquiries come back bit for bit, of the combinations asked for, the last first, and by id or question', async () => {
  const book = await bookWith('one', 'two');
  const first = enquiry('first', 'one', { pullIds: ['p', 'q'] });
  const last = enquiry('last', 'two', { question: 'And 600 hp?', answer: answerOf([]) });
  await book.addEnquiry(first);
  await book.addEnquiry(last);
  expect(await book.enquiries()).toEqual([last, first]);
  expect(await book.enquiries(['one'])).toEqual([first]);
  expect(await book.enquiries([])).toEqual([]);
  expect(await book.enquiry('last')).toEqual(last);
  expect(await book.enquiry('nothing')).toBeNull();
  expect(await book.enquiryNames()).toEqual([
    {
      id: 'last',
      question: 'And 600 hp?',
      combinationId: 'two',
      words: 'and 600 hp? six, 84 mm 520 hp  ',
    },
    {
      id: 'first',
      question: first.question,
      combinationId: 'one',
      words: 'how do i make 520 hp? six, 84 mm 520 hp blower pulley 80 mm ',
    },
  ]);
  expect((await book.outline()).enquiries).toEqual([first, last]);
  expect(await book.named('enquiry', 'and 600 HP?')).toEqual([{ id: 'last', name: 'And 600 hp?' }]);
  expect(await book.subjects(['enquiry first'])).toEqual(
    new Map([['enquiry first', { name: first.question, isThere: true }]]),
  );
});

test('nothing of an enquiry is altered but what became of it and its cards; those are put back by an undo', async () => {
  const book = await bookWith('one');
  await book.addEnquiry(enquiry('e', 'one'));
  const stamp = await book.stamp('enquiry e');
  await book.changeEnquiry('e', { cards: [CARD] }, 'a card left', stamp);
  expect(await book.enquiry('e')).toEqual(enquiry('e', 'one', { cards: [CARD] }));
  expect((await book.log()).at(-1)).toMatchObject({ act: 'enquiry changed', before: { cards: [] } });
  await expect(book.changeEnquiry('e', { cards: [] }, 'again', stamp)).rejects.toMatchObject({
    code: 'changed meanwhile',
  });
  await expect(book.changeEnquiry('nothing', { cards: [] }, '')).rejects.toThrow('no enquiry nothing');
  await book.undo(null);
  expect((await book.enquiry('e'))!.cards).toEqual([]);

  const database = new Database(databaseFile(book.folder));
  onTestFinished(() => void database.close());
  for (const column of ['question', 'asked', 'answer', 'pullIds', 'madeBy', 'at'])
    expect(() => database.exec(`update enquiry set ${column} = ${column}`)).toThrow('never altered');
  expect(() => database.exec('delete from enquiry')).toThrow('never altered');
});

test('an enquiry is withdrawn by undoing it and comes back; its combination stays while it is there', async () => {
  const book = await bookWith('one');
  const added = await book.stamp('combination one');
  await book.addEnquiry(enquiry('e', 'one'));
  await expect(book.undo(added)).rejects.toThrow('the enquiry "How do I make 520 hp?"');
  const [undone] = await book.undo(null);
  expect(await book.enquiries()).toEqual([]);
  expect(await book.enquiry('e')).toBeNull();
  expect((await book.outline()).enquiries).toHaveLength(1);
  await expect(book.changeEnquiry('e', { cards: [CARD] }, '')).rejects.toThrow('no enquiry e');
  await book.undo(added);
  await expect(book.undo(undone!.uid)).rejects.toThrow('was taken out of the book');
  await expect(book.addEnquiry(enquiry('later', 'one'))).rejects.toThrow('was taken out of the book');
});

test('an answer that is no number, or holds what it was made of, is refused', async () => {
  const book = await bookWith('one');
  const spoiled = answerOf([rungOf('a1', Number.NaN)]);
  await expect(book.addEnquiry(enquiry('e', 'one', { answer: spoiled }))).rejects.toThrow(
    'answer.answer.rungs.0.reached.value is no number',
  );
  const made = { match: null, sheet: combination('one').sheet, supply: {} } as never;
  const whole = answerOf([{ ...rungOf('a1'), made }]);
  await expect(book.addEnquiry(enquiry('e', 'one', { answer: whole }))).rejects.toThrow('made of');
  await expect(book.addEnquiry(enquiry('e', 'nowhere'))).rejects.toThrow(/FOREIGN KEY/i);
  expect(await book.enquiries()).toEqual([]);
});

test('a rung becomes a combination of a trial in one step, whole or not at all, and is undone at once', async () => {
  const book = await bookWith('one');
  await book.addEnquiry(enquiry('e', 'one'));
  const seen = await book.stamp('enquiry e');
  const twice = planned('e', 'a1', 'one');
  await expect(
    book.addPlanned({ ...twice, predictions: [...twice.predictions, ...twice.predictions] }),
  ).rejects.toThrow(/UNIQUE/i);
  expect(await book.counts()).toMatchObject({ combinations: 1, trials: 0 });
  expect((await book.enquiry('e'))!.became).toEqual([]);

  await book.addPlanned(planned('e', 'a1', 'one'), seen);
  expect((await book.enquiry('e'))!.became).toMatchObject([{ rungId: 'a1' }]);
  expect(await book.predictions(['trial a1'])).toHaveLength(1);
  await expect(book.addPlanned(planned('e', 'b2', 'one'), seen)).rejects.toMatchObject({
    code: 'changed meanwhile',
  });
  const asked = (await book.log()).find(({ act }) => act === 'enquiry added')!;
  await expect(book.undo(asked.uid)).rejects.toMatchObject({ code: 'in use' });

  const undone = await book.undo(null);
  expect(undone.map(({ act }) => act)).toEqual([
    'undone: enquiry changed',
    'undone: prediction added',
    'undone: trial added',
    'undone: combination added',
  ]);
  expect((await book.enquiry('e'))!.became).toEqual([]);
  expect(await book.predictions()).toEqual([]);
  expect(await book.counts()).toMatchObject({ combinations: 1, trials: 0 });
  await book.undo(undone[0]!.uid);
  expect((await book.enquiry('e'))!.became).toMatchObject([{ trialId: 'trial a1' }]);
  expect(await book.counts()).toMatchObject({ combinations: 2, trials: 1 });

  const { trial, predictions, ...more } = planned('e', 'c3', 'one');
  const ofThat = { ...trial, combinations: planned('e', 'a1', 'one').trial.combinations };
  await book.addPlanned({ ...more, combination: null, trial: ofThat, predictions });
  expect(await book.counts()).toMatchObject({ combinations: 2, trials: 2 });
  expect((await book.undo(null)).map(({ act }) => act)).not.toContain('undone: combination added');
  expect(await book.counts()).toMatchObject({ combinations: 2, trials: 1 });
});

test('merged, an answer rests on and shows the pulls by the ids they have here', async () => {
  const { file, bytes } = fileOf('one run');
  const [ours, theirs] = [await bookWith('ours'), await bookWith('theirs')];
  await ours.addFileWithPulls(file, bytes, [pull('here', { name: 'Run', fileHash: file.hash })]);
  await theirs.addFileWithPulls(file, bytes, [pull('there', { name: 'Run', fileHash: file.hash })]);
  const near = {
    combinationId: 'theirs',
    name: 'Theirs',
    pullIds: ['there'],
    power: 361_000,
    isSameEngine: true,
    side: 'below' as const,
    separates: {},
  };
  const answer = answerOf([rungOf('a1')], [near]);
  await theirs.addEnquiry(enquiry('e', 'theirs', { pullIds: ['there', 'long gone'], answer }));
  const merge = () => mergeBooks(ours.folder, theirs.folder, { dryRun: false });
  expect(await merge()).toMatchObject({ added: { enquiry: 1 }, conflicts: [] });
  const [here] = await ours.enquiries();
  expect(here).toEqual(
    enquiry('e', 'theirs', {
      pullIds: ['here', 'long gone'],
      answer: answerOf([rungOf('a1')], [{ ...near, pullIds: ['here'] }]),
    }),
  );
  await theirs.changeEnquiry('e', { cards: [CARD] }, 'a card left');
  expect(await merge()).toMatchObject({ taken: [{ kind: 'enquiry', id: 'e' }], conflicts: [] });
  expect((await ours.enquiry('e'))!.cards).toEqual([CARD]);
});

test('a rescue keeps enquiries when nothing leads to their pages any more', async () => {
  const book = await openBook(temporaryFolder(), { create: { name: 'Shop' } });
  await book.addEngine(engine);
  await book.addPackage(kit);
  await book.addCombination(combination('one'));
  const many = Array.from({ length: 12 }, (_, at) => enquiry(`e${at}`, 'one'));
  for (const one of many) await book.addEnquiry(one);
  await book.close();
  const database = new Database(databaseFile(book.folder));
  database.unsafeMode(true);
  database.pragma('writable_schema = on');
  database.exec(`update sqlite_schema set rootpage = 0 where name = 'enquiry';
    drop trigger enquiryIsNotDeleted;`);
  database.close();
  const report = await rescueBook(book.folder, () => null, new Date(AT));
  expect(report.kept).toMatchObject({ enquiries: 12, combinations: 1 });
  const after = await openBook(book.folder);
  onTestFinished(() => after.close());
  expect((await after.enquiries()).reverse()).toEqual(many);
});

test('a book of the sixth schema opens with its combinations and takes enquiries', async () => {
  const folder = temporaryFolder();
  mkdirSync(originalsFolder(folder), { recursive: true });
  const older = connect(folder, databaseFile(folder), 100);
  for (const statements of MIGRATIONS.slice(0, 6)) older.database.exec(statements);
  older.database.pragma(`application_id = ${APPLICATION_ID}`);
  older.database.pragma('user_version = 6');
  insertBookRow(older, { id: 'old', name: 'Old book', invented: true, createdAt: AT });
  const { sheet, name } = combination('one');
  older.database.exec(
    `insert into engine (id, name, buildRevision, notes, invented) values ('engine', 'Six', '2', '', 1)`,
  );
  older.database
    .prepare(
      `insert into combination (id, engineId, name, sheet, revision, madeFromId, createdAt, invented)
        values ('one', 'engine', ?, ?, 1, null, '${AT}', 1)`,
    )
    .run(name, JSON.stringify(sheet));
  await older.rows.destroy();

  const book = await openBook(folder);
  onTestFinished(() => book.close());
  expect(await book.info()).toMatchObject({ id: 'old', schemaVersion: NEWEST_SCHEMA });
  expect((await book.combination('one'))!.sheet).toEqual(sheet);
  expect(await book.enquiries()).toEqual([]);
  await book.addEnquiry(enquiry('e', 'one'));
  const database = new Database(databaseFile(folder));
  onTestFinished(() => void database.close());
  expect(database.pragma('foreign_key_check')).toEqual([]);
  const plan = database
    .prepare('explain query plan select * from enquiry where combinationId = ?')
    .all('one');
  expect(JSON.stringify(plan)).toContain('enquiryOfCombination');
});
