import { expect, onTestFinished, test } from 'vitest';
import type { Book, BookTrouble } from './model.ts';
import { openBook } from './open-book.ts';
import { temporaryFolder } from './testing/temporary-folder.ts';
import { combination, engine, pull, trial } from './testing/things.ts';

/** The same book open twice, as two programs have it. */
async function twoWindows(): Promise<[Book, Book]> {
  const folder = temporaryFolder();
  const one = await openBook(folder, { create: { name: 'Shop' } });
  const other = await openBook(folder);
  onTestFinished(async () => {
    await one.close();
    await other.close();
  });
  await one.addEngine(engine);
  await one.addCombination({ ...combination('base'), packageIds: [] });
  await one.addPulls([pull('p')]);
  await one.addTrial(trial('t'));
  await one.addCell({
    id: 'c',
    name: 'C',
    brake: '',
    altitude: null,
    momentOfInertia: null,
    instruments: [],
    notes: '',
  });
  await one.changeSettings({ units: 'si' });
  return [one, other];
}

const CHANGES: {
  subject: string;
  change: (book: Book, words: string, stamp?: string) => Promise<unknown>;
}[] = [
  { subject: 'pull p', change: (book, words, stamp) => book.amendPull('p', { name: words }, words, stamp) },
  {
    subject: 'trial t',
    change: (book, words, stamp) => book.changeTrial(trial('t', { remark: words }), words, stamp),
  },
  {
    subject: 'combination base',
    change: (book, words, stamp) =>
      book.amendCombination('base', combination('base', '97 mm').sheet, words, stamp),
  },
  {
    subject: 'engine engine',
    change: (book, words, stamp) => book.changeEngine({ ...engine, notes: words }, words, stamp),
  },
  {
    subject: 'cell c',
    change: async (book, words, stamp) =>
      book.changeCell({ ...(await book.cells())[0]!, notes: words }, words, stamp),
  },
  { subject: 'settings', change: (book, words, stamp) => book.changeSettings({ shopName: words }, stamp) },
];

test.each(CHANGES)(
  '$subject: what was looked at before another wrote is refused, and says what came',
  async ({ subject, change }) => {
    const [one, other] = await twoWindows();
    const looked = await one.stamp(subject);
    await change(other, 'theirs', looked);
    const log = await one.log();
    const refusal = await change(one, 'mine', looked).then(
      () => null,
      (trouble: BookTrouble) => trouble,
    );
    expect(refusal).toMatchObject({ code: 'changed meanwhile' });
    expect(refusal?.since).toEqual(log.slice(-1));
    expect(await one.log()).toEqual(log);
    // On the newer stamp, or without one, it goes through.
    await change(one, 'mine too', await one.stamp(subject));
    await change(one, 'from a program that looks at nothing');
    expect((await one.log()).length).toBe(log.length + 2);
  },
);

test('one setting does not stand in the way of another', async () => {
  const [one, other] = await twoWindows();
  const looked = await one.stamp('settings');
  await other.changeSettings({ units: 'si' }, looked);
  await one.changeSettings({ binWidthRpm: 200 }, looked);
  expect(await one.settings()).toEqual({ units: 'si', binWidthRpm: 200 });
});

test('two at once on one stamp: one is written, one is refused', async () => {
  const [one, other] = await twoWindows();
  const looked = await one.stamp('pull p');
  const outcomes = await Promise.allSettled([
    one.amendPull('p', { cell: 'cell 1' }, 'first', looked),
    other.amendPull('p', { cell: 'cell 2' }, 'second', looked),
  ]);
  expect(outcomes.map(({ status }) => status).sort()).toEqual(['fulfilled', 'rejected']);
});

test('pulls of a session stand in the order in which they came, unless somebody says otherwise', async () => {
  const [book] = await twoWindows();
  await book.addSession({ id: 's', name: '', cell: 'C', day: '2026-03-14', notes: '' });
  await book.addPulls([pull('a', { sessionId: 's' }), pull('b', { sessionId: 's', orderInSession: 7 })]);
  await book.addPulls([pull('c', { sessionId: 's' })]);
  await book.amendPull('p', { sessionId: 's' }, 'found its day');
  const order = Object.fromEntries((await book.pullHeads()).map((one) => [one.id, one.orderInSession]));
  expect(order).toEqual({ a: 1, b: 7, c: 8, p: 9 });
});
