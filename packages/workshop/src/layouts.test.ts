import { afterEach, beforeEach, expect, test } from 'vitest';
import { pullDetailsFromText } from './edge/pull-details.ts';
import { importFile, previewImport } from './import-file.ts';
import { forgetLayout, layoutRows } from './layouts.ts';
import { readFileForImport } from './read-file.ts';
import { temporaryBook } from './testing/temporary-book.ts';

const VIEW = { units: 'us', decimalMark: '.' } as const;

let made: Awaited<ReturnType<typeof temporaryBook>>;
beforeEach(async () => {
  made = await temporaryBook();
});
afterEach(() => made.remove());

/** “Load” is no word we know: what it is has to be said once. */
const odd = (scale: number, header = 'rpm,Load'): Uint8Array =>
  new TextEncoder().encode(
    `${header === '' ? '' : `${header}\n`}${Array.from({ length: 12 }, (_, row) => `${2000 + 250 * row},${(scale * (30 + row ** 1.5)).toFixed(2)}`).join('\n')}\n`,
  );
const MAP = ['Load=torque:kgf·m'];
const put = (name: string, bytes: Uint8Array, more: object = {}) =>
  importFile(made.book, { name, bytes, ...more });
const remarksOf = (result: Awaited<ReturnType<typeof put>>) => (result.ok ? result.value : result).remarks;
const codes = (result: Awaited<ReturnType<typeof put>>) => remarksOf(result).map(({ code }) => code);

test('what was said of a file is taken for the next of its kind, and said so', async () => {
  const details = pullDetailsFromText({ cell: 'Cell 2', carried: { standard: 'observed' } }, '2026-03-14');
  await put('run-1.csv', odd(1), { columns: MAP, details: details.ok ? details.value : {} });
  const next = await put('run-2.csv', odd(1.02));
  if (!next.ok) throw new Error('refused');
  expect(codes(next)).toContain('kind-known');
  expect(remarksOf(next).find(({ code }) => code === 'kind-known')?.message).toMatch(
    /Read as confirmed on \d{4}-\d\d-\d\d for run-1\.csv\..*cell Cell 2, figures as observed/,
  );
  const pull = (await made.book.pull(next.value.pulls[0]!.id))!;
  // 1 kgf·m = 9.806 65 N·m, the standard weight of a kilogram on a metre.
  expect(pull.channels[1]?.values[0]).toBeCloseTo(1.02 * 30 * 9.80665, 9);
  expect([pull.cell, pull.carried]).toEqual(['Cell 2', { standard: 'observed', factor: 1 }]);
});

test('what is said of the next file goes before what was said of the first', async () => {
  const cell = { details: { cell: 'Cell 2' } };
  await put('run-1.csv', odd(1), { columns: MAP, ...cell });
  await put('run-2.csv', odd(1.02), { details: { cell: 'Cell 1' } });
  const heads = await made.book.pullHeads();
  expect(heads.map(({ cell: where }) => where)).toEqual(['Cell 1', 'Cell 2']);
});

test('a guess that nobody confirmed is not remembered', async () => {
  await put('run-1.csv', odd(1, 'rpm,Torque [N·m]'));
  expect(await layoutRows(made.book)).toEqual([]);
});

test('the report of a file says that its kind is known, and gives what was confirmed', async () => {
  await put('run-1.csv', odd(1), { columns: MAP });
  const report = await readFileForImport(made.book, { bytes: odd(1.02), name: 'run-2.csv' }, VIEW);
  if (!report.ok) throw new Error('refused');
  expect(report.value.knownLayout).toMatchObject({ name: 'run-1.csv', taken: true, conflicts: [] });
  expect(report.value.mapping[1]).toEqual({ index: 1, meaning: 'torque', unit: 'kgf·m' });
});

test('what does not fit is asked again, with the reason, and not put in silently', async () => {
  await put('run-1.csv', odd(1), { columns: MAP });
  const wild = odd(100);
  const report = await readFileForImport(made.book, { bytes: wild, name: 'run-3.csv' }, VIEW);
  if (!report.ok) throw new Error('refused');
  expect(report.value.knownLayout?.taken).toBe(false);
  expect(report.value.knownLayout?.conflicts[0]).toMatch(/“Load” was torque in kgf·m; 12 of its 12 readings/);
  expect(report.value.mapping[1]?.meaning).not.toBe('torque');
  const refused = await put('run-3.csv', wild);
  expect(refused.ok).toBe(false);
  expect(codes(refused)).toEqual(['kind-doubted']);
  expect((await put('run-3.csv', wild, { columns: ['Load=torque:N·m'] })).ok).toBe(true);
});

test('forgotten, the next file is guessed anew; a preview uses what is remembered', async () => {
  await put('run-1.csv', odd(1), { columns: MAP });
  const preview = await previewImport(made.book, { name: 'run-2.csv', bytes: odd(1.02) });
  expect(preview.ok && preview.value.pulls[0]?.channels[1]?.unit).toBe('kgf·m');
  const anew = await previewImport(made.book, { name: 'run-2.csv', bytes: odd(1.02), readAnew: true });
  expect(codes(anew)).not.toContain('kind-known');
  expect((await forgetLayout(made.book, 'run-1.csv')).ok).toBe(true);
  expect((await forgetLayout(made.book, 'run-1.csv')).remarks[0]?.code).toBe('unknown-id');
  expect(await layoutRows(made.book)).toEqual([]);
});

test('without a header nothing is remembered, and that is said', async () => {
  const bare = odd(1, '');
  const columns = ['1=engineSpeed:rpm', '2=torque:N·m'];
  expect(codes(await put('bare.csv', bare, { columns }))).toContain('kind-not-known-again');
  expect(await layoutRows(made.book)).toEqual([]);
});
