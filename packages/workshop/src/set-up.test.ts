import { afterAll, beforeAll, expect, test } from 'vitest';
import { amendPull } from './amend-pull.ts';
import { addCombinationFromText, changesBetween } from './combinations.ts';
import { importFile } from './import-file.ts';
import { addPackage } from './packages.ts';
import { sheetText, stepTestFile, temporaryBook } from './testing/temporary-book.ts';

let made: Awaited<ReturnType<typeof temporaryBook>>;
beforeAll(async () => {
  made = await temporaryBook();
  for (const name of ['Base cam', 'Long cam']) {
    await addCombinationFromText(made.book, { sheetText: sheetText(name), engineName: 'Six' });
  }
});
afterAll(() => made.remove());

const put = (name: string, scale: number, combinationId: string | null, setUpWords: string) =>
  importFile(made.book, { name, bytes: stepTestFile(scale), details: { combinationId, setUpWords } });
const setUpOf = async (name: string) =>
  (await made.book.pullHeads()).find((one) => one.name === name)!.setUpId;

test('the same words of the same combination are one set-up', async () => {
  await put('a.csv', 1, 'Base cam', 'first fitting');
  await put('b.csv', 1.01, 'Base cam', 'First fitting');
  await put('c.csv', 1.02, 'Base cam', 'second fitting');
  await put('d.csv', 1.03, 'Long cam', 'first fitting');
  expect(await made.book.setUps()).toHaveLength(3);
  expect(await setUpOf('a')).toBe(await setUpOf('b'));
  expect(await setUpOf('c')).not.toBe(await setUpOf('b'));
  expect(await setUpOf('d')).not.toBe(await setUpOf('a'));
});

test('a set-up without its combination is refused and nothing is stored', async () => {
  const before = (await made.book.pullHeads()).length;
  const refused = await put('e.csv', 1.04, null, 'first fitting');
  expect(refused.ok).toBe(false);
  expect(refused.remarks[0]!.code).toBe('set-up-without-combination');
  expect(await made.book.pullHeads()).toHaveLength(before);
});

test('a pull that moves to another combination leaves its set-up behind', async () => {
  expect((await amendPull(made.book, 'b', { combinationId: 'Long cam' }, 'wrong one')).ok).toBe(true);
  expect(await setUpOf('b')).toBeNull();
  expect((await amendPull(made.book, 'b', { setUpWords: 'first fitting' }, 'looked it up')).ok).toBe(true);
  expect(await setUpOf('b')).toBe(await setUpOf('d'));
});

test('parts of a package fitted on one side carry its name', async () => {
  expect((await addPackage(made.book, 'Blower', ['supercharger', 'drive'])).ok).toBe(true);
  const blown = `${sheetText('Blown')}supercharger:\n  type: centrifugal\ndrive:\n  crankPulleyDiameter: 180 mm\n`;
  const added = await addCombinationFromText(made.book, {
    sheetText: blown,
    madeFromId: 'Base cam',
    packageIds: ['blower'],
  });
  expect(added.ok).toBe(true);
  const between = await changesBetween(made.book, 'Base cam', 'Blown');
  if (!between.ok) throw new Error('refused');
  expect(between.value.changes.map((one) => one.packageName)).toEqual(['Blower', 'Blower']);
});

test.each([
  ['Blower', ['supercharger'], 'package-name'],
  [' ', ['supercharger'], 'package-name'],
  ['Other', ['wheels'], 'package-parts'],
  ['Other', [], 'package-parts'],
])('package %j over %j is refused: %s', async (name, covers, code) => {
  const answer = await addPackage(made.book, name, covers);
  expect(answer.ok).toBe(false);
  expect(answer.remarks[0]!.code).toBe(code);
});
