import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { addCombinationFromText } from './combinations.ts';
import { editTrial } from './edit-trial.ts';
import { changesOf } from './history-words.ts';
import { importFile } from './import-file.ts';
import { keepPlan } from './plan.ts';
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
    [{ takenApart: { A: true } }, 'taken-apart-key'],
    [{ takenApart: { K: true } }, 'taken-apart-key'],
    [{ pulls: [{ pullId: 'Short 0', key: 'A', role: 'counted' as const }] }, 'key-of-pull'],
  ])('%j is refused: %s, and nothing changes', async (edit, code) => {
    const before = await trial();
    expect(codeOf(await editTrial(made.book, trialId, edit, ''))).toBe(code);
    expect(await trial()).toEqual(before);
  });

  test('what is said of the engine is kept, told in the history, and follows its combination', async () => {
    const byKey = async () =>
      Object.fromEntries((await trial()).combinations.map((one) => [one.key, one.takenApart]));
    expect(await byKey()).toEqual({ A: undefined, B: undefined });
    expect(codeOf(await editTrial(made.book, trialId, { takenApart: { B: false } }, 'on the brake'))).toBe(
      'ok',
    );
    expect(await byKey()).toEqual({ A: undefined, B: false });
    const change = (await made.book.log()).at(-1)!;
    const lines = changesOf(change, (_, id) => id, { units: 'us', decimalMark: '.' });
    expect(lines.map(({ label, after }) => `${label}: ${after}`)).toEqual([
      'Combinations: A long; B short (engine not taken apart for it)',
    ]);
    const third = { combinations: [combination('Long'), combination('Longest'), combination('Short')] };
    expect(codeOf(await editTrial(made.book, trialId, third, ''))).toBe('ok');
    expect(await byKey()).toEqual({ A: undefined, B: undefined, C: false });
    await editTrial(made.book, trialId, { takenApart: { C: null } }, '');
    expect(await byKey()).toEqual({ A: undefined, B: undefined, C: undefined });
  });

  test('against another baseline what was said of the engine is gone, and the remark tells so', async () => {
    const [first, second] = [combination('Long'), combination('Short')];
    await editTrial(made.book, trialId, { combinations: [first, second], takenApart: { B: true } }, '');
    const turned = await editTrial(made.book, trialId, { combinations: [second, first] }, '');
    expect(turned.remarks.map(({ code }) => code)).toEqual(['taken-apart-of-other-baseline']);
    expect((await trial()).combinations.map(({ takenApart }) => takenApart)).toEqual([undefined, undefined]);
    // Said in the same change it holds, and there is nothing to remark.
    const back = { combinations: [first, second], takenApart: { B: false } };
    expect((await editTrial(made.book, trialId, back, '')).remarks).toEqual([]);
    expect((await trial()).combinations[1]!.takenApart).toBe(false);
    await editTrial(made.book, trialId, { takenApart: { B: null } }, '');
  });

  test('the kept plan follows the keys; pulls of a combination that leaves are out of it, said so', async () => {
    const three = [combination('Long'), combination('Short'), combination('Longest')];
    await editTrial(made.book, trialId, { combinations: three }, '');
    const kept = await keepPlan(made.book, trialId, { gain: '6 %', maximumPulls: 12 });
    if (!kept.ok) throw new Error(kept.remarks[0]!.message);
    const planOf = async () => {
      const { plan } = await trial();
      return { pulls: plan!.pulls.map(({ key }) => key), looksAt: plan!.looksAt };
    };
    const planned = await planOf();
    expect(new Set(planned.pulls)).toEqual(new Set(['A', 'B', 'C']));
    const turned = { combinations: [three[0]!, three[2]!, three[1]!] };
    expect((await editTrial(made.book, trialId, turned, '')).remarks).toEqual([]);
    const swapped: Record<string, string> = { A: 'A', B: 'C', C: 'B' };
    expect((await planOf()).pulls).toEqual(planned.pulls.map((key) => swapped[key]));
    const two = await editTrial(made.book, trialId, { combinations: [three[0]!, three[1]!] }, '');
    expect(two.remarks.map(({ code }) => code)).toEqual(['planned-pulls-gone']);
    const rest = await planOf();
    expect(rest.pulls).toEqual(planned.pulls.filter((key) => key !== 'C'));
    expect(rest.looksAt.at(-1)).toBe(rest.pulls.length);
  });

  test('a pull can be left out and taken in again', async () => {
    const edit = (role: 'left out' | 'warm-up') => ({ pulls: [{ pullId: 'Short 0', role }] });
    await editTrial(made.book, trialId, edit('left out'), '');
    expect((await trial()).pulls).toHaveLength(3);
    await editTrial(made.book, trialId, edit('warm-up'), '');
    expect((await trial()).pulls.filter((one) => one.role === 'warm-up')).toHaveLength(1);
  });
});
