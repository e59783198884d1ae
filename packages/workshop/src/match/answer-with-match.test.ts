import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Book, openBook } from '@pullbook/store';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { makeDemoBook } from '../demo-book.ts';
import { answerOf } from '../trial-answer.ts';
import { answerBeforeMatch, answerWithMatch } from './answer-with-match.ts';
import { matchOfTrial } from './match-bundle.ts';

let parent = '';
let book: Book;
beforeAll(async () => {
  parent = await mkdtemp(join(tmpdir(), 'pullbook-match-'));
  await makeDemoBook(join(parent, 'demo'));
  book = await openBook(join(parent, 'demo'));
});
afterAll(async () => {
  await book.close();
  await rm(parent, { recursive: true, force: true });
});

const asked = async (question: string) =>
  (await book.trials()).find((one) => one.question.startsWith(question))!;

test('with a map in the book a reason that rests on the speed line says how it runs', async () => {
  const trial = await asked('What does the longer cam add');
  const without = (await answerOf(book, trial)).explanations[0]!.likeliest!;
  const within = (await answerWithMatch(book, trial)).explanations[0]!.likeliest!;
  expect([without.id, within.id]).toEqual(['breathes-better', 'breathes-better']);
  expect(without.text.text).toContain('without its map that is not known');
  expect(within.text.text).toContain('By the match');
});

test('where nothing rests on it no match is made: the very same answer', async () => {
  const trial = await asked('What does the supercharger add');
  expect(await answerWithMatch(book, trial)).toBe(await answerOf(book, trial));
});

test('before the match is made nothing is said that it may say otherwise, and that it comes', async () => {
  const resting = await answerBeforeMatch(book, await asked('What does the longer cam add'));
  expect(resting.isWhole).toBe(false);
  expect(resting.answer.explanations).toEqual([]);
  expect(resting.answer.comparison).not.toBeNull();
  expect(resting.answer.remarks.at(-1)).toMatchObject({ code: 'match-to-come' });
  const other = await asked('What does the supercharger add');
  expect(await answerBeforeMatch(book, other)).toEqual({
    answer: await answerOf(book, other),
    isWhole: true,
  });
});

test('of many pulls of a combination the fit takes those added last, and says so', async () => {
  const trial = await asked('What does the longer cam add');
  const [{ combinationId, key } = { combinationId: '', key: '' }] = trial.combinations;
  const [newest] = await book.pullHeadsWith([combinationId]);
  const [pull] = await book.pulls([newest!.id]);
  const more = Array.from({ length: 6 }, (_, place) => ({
    ...pull!,
    id: `more ${place}`,
    name: `More ${place}`,
  }));
  await book.addPulls(more);
  const bundle = await matchOfTrial(book, trial.id);
  if (!bundle.ok) throw new Error(bundle.remarks[0]!.message);
  const matched = bundle.value.combinations.find((one) => one.key === key)!;
  expect(matched.fit!.pullIds).toEqual(more.map(({ id }) => id));
  expect(matched.assumptions.map(({ code }) => code)).toContain('fitted-to-last');
  expect(matched.measured!.pullIds.length).toBeGreaterThan(6);
});
