import { expect, onTestFinished, test } from 'vitest';
import { mergeBooks } from './merge/merge-books.ts';
import type { Book } from './model.ts';
import { openBook } from './open-book.ts';
import { temporaryFolder } from './testing/temporary-folder.ts';
import { AT, combination, engine, trial } from './testing/things.ts';

const AT_ALL = { ruleId: 'V13', subject: 'trial one', reason: 'new belt that day', at: AT };
const PLAN = {
  gainRatio: 0.02,
  odds: 0.8,
  pulls: [{ key: 'A' }, { key: 'B' }],
  looksAt: [2],
  stopCriteria: null,
  notes: '',
};
const PREDICTION = {
  id: 'guess',
  trialId: 'one',
  key: 'B',
  what: 'meanGain' as const,
  value: 0.03,
  low: 0.01,
  high: 0.05,
  basis: 'guess',
  at: AT,
};

async function bookWithTrial(name = 'Shop'): Promise<Book> {
  const book = await openBook(temporaryFolder(), { create: { name } });
  onTestFinished(() => book.close());
  await book.addEngine(engine);
  await book.addCombination({ ...combination('base'), packageIds: [] });
  await book.addTrial(
    trial('one', {
      combinations: [{ key: 'A', combinationId: 'base', shortName: 'base', takenApart: false }],
    }),
  );
  return book;
}

test('a plan and whether the engine was taken apart are kept, changed and put back', async () => {
  const book = await bookWithTrial();
  const before = (await book.trial('one'))!;
  expect(before.combinations[0]!.takenApart).toBe(false);
  expect('plan' in before).toBe(false);
  await book.changeTrial({ ...before, plan: PLAN }, 'planned');
  expect((await book.trial('one'))!.plan).toEqual(PLAN);
  await book.undo(null);
  expect(await book.trial('one')).toEqual(before);
});

test('a rule is silenced once for a subject, gets another reason, speaks again, and each is undone', async () => {
  const book = await bookWithTrial();
  const { id } = await book.silence(AT_ALL);
  await book.silence({ ...AT_ALL, reason: 'belt looked at' });
  expect(await book.silenced(['trial one'])).toEqual([{ ...AT_ALL, id, reason: 'belt looked at' }]);
  expect(await book.silenced(['trial two'])).toEqual([]);
  await book.undo(null);
  expect((await book.silenced())[0]!.reason).toBe('new belt that day');
  await book.letSpeak(id, 'belt slipped after all');
  expect(await book.silenced()).toEqual([]);
  await book.undo(null);
  expect(await book.silenced()).toHaveLength(1);
  await book.letSpeak('V13 of nothing', 'never silenced');
  expect((await book.log()).filter(({ act }) => act === 'rule let speak')).toHaveLength(1);
});

test('a prediction is never altered or deleted, and is withdrawn by undoing it', async () => {
  const book = await bookWithTrial();
  await book.addPrediction(PREDICTION);
  expect(await book.predictions(['one'])).toEqual([PREDICTION]);
  expect(await book.predictions(['two'])).toEqual([]);
  await book.undo(null);
  expect(await book.predictions()).toEqual([]);
  expect((await book.contents()).predictions).toEqual([PREDICTION]);
});

test('merged, two that silence the same rule say it once, and predictions of both are there', async () => {
  const one = await bookWithTrial();
  const two = await bookWithTrial('Laptop');
  await one.silence(AT_ALL);
  await two.silence(AT_ALL);
  await one.addPrediction(PREDICTION);
  await two.addPrediction({ ...PREDICTION, id: 'other', value: 0.04 });
  await mergeBooks(one.folder, two.folder, { dryRun: false });
  expect(await one.silenced()).toHaveLength(1);
  expect((await one.predictions()).map(({ id }) => id).sort()).toEqual(['guess', 'other']);
});
