import type { Book } from '@pullbook/store';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { addCombinationFromText } from './combinations.ts';
import { importFile } from './import-file.ts';
import { forgetPlan, keepPlan, planOf } from './plan.ts';
import { baselinesAtRisk } from './plan-guard.ts';
import { pullSheetOf } from './plan-page.ts';
import { startTrial } from './start-trial.ts';
import { sheetText, stepTestFile, temporaryBook } from './testing/temporary-book.ts';

let book: Book;
let remove: () => Promise<void>;
let trialId = '';
const combinations: Record<string, string> = {};

/** A pull on 4 May 2026; `now` of the tests is that day. */
const NOW = new Date('2026-05-04T12:00:00');

async function pulled(key: string, scale: number, time: string) {
  const details = { combinationId: combinations[key]!, recordedAt: `2026-05-04T${time}:00`, cell: 'cell 1' };
  const imported = await importFile(book, {
    name: `${key} ${time}.csv`,
    bytes: stepTestFile(scale),
    details,
  });
  if (!imported.ok) throw new Error(imported.remarks[0]?.message);
  return imported;
}

async function made<T>(
  result: Promise<{ ok: true; value: T } | { ok: false; remarks: { message: string }[] }>,
) {
  const done = await result;
  if (!done.ok) throw new Error(done.remarks[0]?.message);
  return done.value;
}

beforeEach(async () => {
  ({ book, remove } = await temporaryBook());
  const base = await made(
    addCombinationFromText(book, { sheetText: sheetText('Base cam'), engineName: 'Six' }),
  );
  const other = sheetText('Longer cam').replace(
    'shortBlock:',
    'cam:\n  durationIntake: 254 deg\nshortBlock:',
  );
  const changed = await made(addCombinationFromText(book, { sheetText: other, madeFromId: base.id }));
  combinations.A = base.id;
  combinations.B = changed.id;
  await pulled('A', 1, '09:00');
  await pulled('A', 1.002, '09:15');
  const started = await made(
    startTrial(book, {
      question: 'What does the longer cam add?',
      kind: 'comparison',
      combinations: [
        { combinationId: base.id, shortName: 'base cam' },
        { combinationId: changed.id, shortName: 'longer cam' },
      ],
    }),
  );
  trialId = started.id;
});
afterEach(() => remove());

describe('a plan', () => {
  test('goes on from the baseline on the brake, and says what it gives in per cent and kW', async () => {
    const plan = await made(planOf(book, trialId, { gain: '6 %' }, null, NOW));
    expect(plan.pulls[0]).toMatchObject({ order: 1, combination: 'B', takenApartBefore: true });
    expect(plan.whatIsMade).toMatchObject({
      pulls: [
        { combination: 'A', counted: 2 },
        { combination: 'B', counted: 0 },
      ],
      smallestDifferencePercent: null,
    });
    expect(plan.reaches).toBe(true);
    expect(plan.smallestDifferencePercent).toBeLessThanOrEqual(6);
    expect(plan.smallestDifferenceKw).toBeCloseTo(
      (plan.smallestDifferencePercent! / 100) * plan.baselineKw!,
      9,
    );
    expect(plan.looksAt.at(-1)).toBe(2 + plan.pulls.length);
  });

  test('a gain as power is that share of the baseline', async () => {
    const inPercent = await made(planOf(book, trialId, { gain: '6 %' }, null, NOW));
    const watts = `${(0.06 * inPercent.baselineKw!).toFixed(6)} kW`;
    const inPower = await made(planOf(book, trialId, { gain: watts }, null, NOW));
    expect(inPower.gainPercent).toBeCloseTo(6, 6);
  });

  test('kept, followed pull by pull, forgotten, and forgotten undone', async () => {
    await made(keepPlan(book, trialId, { gain: '6 %' }, undefined, NOW));
    const { kept, pulls } = await made(planOf(book, trialId, {}, null, NOW));
    expect(kept!.left.map(({ combination }) => combination)).toEqual(
      pulls.map(({ combination }) => combination),
    );
    expect(kept!.left[0]).toEqual({ order: 3, combination: 'B' });
    const sheet = await made(
      pullSheetOf(book, trialId, {}, { units: 'us', decimalMark: '.' }, undefined, NOW),
    );
    expect(sheet.pulls).toBe(kept!.left.length);
    expect(sheet.html).toContain('size: letter portrait');
    expect(sheet.html).toContain('Nobody in the cell during a pull.');
    await made(forgetPlan(book, trialId));
    expect((await book.trial(trialId))!.plan ?? null).toBeNull();
    await book.undo(null);
    expect((await book.trial(trialId))!.plan!.gainRatio).toBeCloseTo(0.06, 12);
  });

  test.each([
    [{ gain: '0 %' }, /0\.1 % to 50 %/],
    [{ gain: '80 %' }, /0\.1 % to 50 %/],
    [{ gain: 'much' }, /such as 2 %, or a power such as 8 hp/],
    [{ odds: '1' }, /from 0\.5 to 0\.99/],
    [{ odds: 'likely' }, /from 0\.5 to 0\.99/],
    [{ looks: 4 }, /Give 1, 2 or 3/],
    [{ maximumPulls: 0 }, /from 1 to 40/],
    [{ maximumPulls: 1 }, /Allow more/],
  ])('%o is refused with what is accepted', async (asked, words) => {
    const plan = await planOf(book, trialId, asked, null, NOW);
    expect(plan.ok).toBe(false);
    expect(plan.remarks[0]!.message).toMatch(words);
  });
});

describe('the guard of the baseline', () => {
  test('speaks while the baseline is on the brake and its pulls are too few', async () => {
    await made(keepPlan(book, trialId, { gain: '2 %' }, undefined, NOW));
    const [risk] = await baselinesAtRisk(book, undefined, NOW);
    expect(risk).toMatchObject({ trialId, combinationId: combinations.A });
    expect(risk!.remark.message).toMatch(/You are about to lose the baseline: one more pull\?/);
    expect(await baselinesAtRisk(book, combinations.B, NOW)).toEqual([]);
  });

  test('is silent where the kept plan has the baseline leave now and come back', async () => {
    await made(keepPlan(book, trialId, { gain: '2 %' }, undefined, NOW));
    const trial = (await book.trial(trialId))!;
    const planned = async (order: string) => {
      const pulls = [...order].map((key) => ({ key }));
      await book.changeTrial({ ...trial, plan: { ...trial.plan!, pulls, looksAt: [pulls.length] } }, '');
      return (await baselinesAtRisk(book, undefined, NOW)).length;
    };
    // Two of A are made.
    expect(await planned('AABBA')).toBe(0);
    expect(await planned('AAABB')).toBe(1);
    expect(await planned('AABB')).toBe(1);
  });

  test('stands in the import of the first pull of another combination, and no longer after it', async () => {
    await made(keepPlan(book, trialId, { gain: '2 %' }, undefined, NOW));
    const codes = (imported: Awaited<ReturnType<typeof pulled>>) =>
      imported.value.remarks.map(({ code }) => code);
    expect(codes(await pulled('A', 1.001, '09:30'))).not.toContain('losing-the-baseline');
    expect(codes(await pulled('B', 1.03, '13:00'))).toContain('losing-the-baseline');
    expect(codes(await pulled('B', 1.031, '13:15'))).not.toContain('losing-the-baseline');
  });
});
