import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { addCombinationFromText } from './combinations.ts';
import { editTrial } from './edit-trial.ts';
import { importFile } from './import-file.ts';
import { startTrial } from './start-trial.ts';
import { sheetText, stepTestFile, temporaryBook } from './testing/temporary-book.ts';

let made: Awaited<ReturnType<typeof temporaryBook>>;
let trialId = '';
const combination = (name: string) => ({ combinationId: name, shortName: name.toLowerCase() });

beforeAll(async () => {
  made = await temporaryBook();
  for (const [index, name] of ['Short', 'Long', 'Longest'].entries()) {
    await addCombinationFromText(made.book, { sheetText: sheetText(name), engineName: 'Six' });
    const [made0] = (await made.book.combinations()).filter((one) => one.name === name);
    for (const repeat of [0, 1]) {
      await importFile(made.book, {
        name: `${name} ${repeat}.csv`,
        bytes: stepTestFile(1 + index / 50 + repeat / 500),
        details: {
          combinationId: made0!.id,
          outcome: repeat === 1 && name === 'Long' ? 'aborted' : 'completed',
        },
      });
    }
  }
  const started = await startTrial(made.book, {
    question: ' Which cam? ',
    kind: 'comparison',
    combinations: [combination('Short'), combination('Long')],
    correction: 'observed',
  });
  if (!started.ok) throw new Error(started.remarks[0]!.message);
  trialId = started.value.id;
});
afterAll(() => made.remove());

const trial = async () => (await made.book.trial(trialId))!;
const codeOf = (result: { ok: boolean; remarks: { code: string }[] }) =>
  result.ok ? 'ok' : result.remarks[0]!.code;

describe('a trial', () => {
  test('takes every pull of its combinations, the aborted one as rejected', async () => {
    const { question, pulls, combinations } = await trial();
    expect(question).toBe('Which cam?');
    expect(combinations.map((one) => one.key)).toEqual(['A', 'B']);
    expect(pulls.map((one) => `${one.key} ${one.role}`).sort()).toEqual([
      'A counted',
      'A counted',
      'B counted',
      'B rejected',
    ]);
  });

  test('turned round, its pulls follow their combination', async () => {
    const before = await trial();
    const turned = { combinations: [combination('Long'), combination('Short')] };
    expect(codeOf(await editTrial(made.book, trialId, turned, 'the long one was there first'))).toBe('ok');
    const after = await trial();
    const keyOf = (pulls: typeof before.pulls, id: string) => pulls.find((one) => one.pullId === id)!.key;
    for (const { pullId } of before.pulls) {
      expect(keyOf(after.pulls, pullId)).not.toBe(keyOf(before.pulls, pullId));
    }
    expect((await made.book.log()).some((one) => one.reason === 'the long one was there first')).toBe(true);
  });

  test.each([
    [{ question: '  ' }, 'no-question'],
    [{ averagesWindowRpm: [5000, 4000] as [number, number] }, 'averages-window'],
    [{ combinations: [combination('Short')] }, 'combinations-of-trial'],
    [{ combinations: [combination('Short'), combination('Short')] }, 'combination-twice'],
    [{ combinations: [combination('Short'), combination('Nothing')] }, 'unknown-id'],
    [{ pulls: [{ pullId: 'Longest 0', role: 'counted' as const }] }, 'pull-of-other-combination'],
    [{ pulls: [{ pullId: 'Short 0', role: 'rejected' as const }] }, 'no-reason'],
    [{ pulls: [{ pullId: 'Short 0', key: 'A', role: 'counted' as const }] }, 'key-of-pull'],
  ])('%j is refused: %s, and nothing changes', async (edit, code) => {
    const before = await trial();
    expect(codeOf(await editTrial(made.book, trialId, edit, ''))).toBe(code);
    expect(await trial()).toEqual(before);
  });

  test('a pull can be left out and taken in again', async () => {
    const edit = (role: 'left out' | 'warm-up') => ({ pulls: [{ pullId: 'Short 0', role }] });
    await editTrial(made.book, trialId, edit('left out'), '');
    expect((await trial()).pulls).toHaveLength(3);
    await editTrial(made.book, trialId, edit('warm-up'), '');
    expect((await trial()).pulls.filter((one) => one.role === 'warm-up')).toHaveLength(1);
  });
});
