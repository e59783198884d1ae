import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { captured, capturedJson } from './testing/captured.ts';

let folder = '';
const at = (name: string): string => join(folder, name);
const book = (): string[] => ['--book', at('book')];

/** Oil pressure of 8 psi for each 1,000 r/min, and power that is not torque × speed. */
const tired = (): string => {
  const rows = Array.from({ length: 26 }, (_, row) => 2000 + 180 * row);
  const line = (rpm: number) =>
    [rpm, 400 - ((rpm - 4200) / 300) ** 2, 20 + rpm / 100, (8 * rpm) / 1000].join(',');
  return `rpm,torque_Nm,power_kW,Oil pressure (psi)\n${rows.map(line).join('\n')}\n`;
};

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'pullbook-rules-cli-'));
  await writeFile(at('tired.csv'), tired());
});
afterAll(() => rm(folder, { recursive: true, force: true }));

test('the catalogue is listed without a book, and one rule by its id', async () => {
  const all = await capturedJson(['rules', ...book()]);
  expect(all.json.rules).toHaveLength(52);
  const one = await capturedJson(['rules', 'v39', ...book()]);
  expect(one.json.rules).toMatchObject([{ id: 'V39', sourceKind: 'common practice' }]);
  expect((await captured(['rules', 'V99', ...book()])).code).not.toBe(0);
});

test('findings come with a file, with a check and with what is shown; silenced they stay', async () => {
  const preview = await capturedJson(['import', at('tired.csv'), '--dry-run', ...book()]);
  const rules = preview.json.findings.map((one: { ruleId: string }) => one.ruleId);
  expect(rules).toEqual(expect.arrayContaining(['V01', 'V39']));
  const imported = await capturedJson(['import', at('tired.csv'), '--name', 'Tired', ...book()]);
  expect(imported.json.findings.map((one: { ruleId: string }) => one.ruleId)).toEqual(rules);

  const checked = await capturedJson(['check', 'Tired', ...book()]);
  const oil = checked.json.checked[0].findings.find((one: { ruleId: string }) => one.ruleId === 'V39');
  // 8 psi and 10 psi in kPa: 6.894757 kPa each.
  expect(oil).toMatchObject({ level: 'caution', unit: 'kPa', silenced: null });
  expect(oil.value).toBeCloseTo(55.158, 2);
  expect(oil.threshold).toBeCloseTo(68.948, 2);

  const without = await capturedJson(['silence', 'V39', '--pull', 'Tired', ...book()]);
  expect(without.json.error.code).toBe('no-reason');
  const why = 'gauge on the gallery end';
  expect((await captured(['silence', 'V39', '--pull', 'Tired', '--reason', why, ...book()])).code).toBe(0);
  const shown = await captured(['show', 'Tired', ...book()]);
  expect(shown.out).toMatch(new RegExp(`silenced V39 .+\\(${why}\\)`));
  expect(shown.out).toMatch(/alarm +V01/);
  expect((await captured(['silence', 'V39', '--pull', 'Tired', '--speak', ...book()])).code).toBe(0);
  expect((await captured(['check', 'Tired', ...book()])).out).toMatch(/caution +V39/);

  await captured(['rules', '--set', 'V39.oil=7.5 psi', ...book()]);
  expect((await captured(['check', 'Tired', ...book()])).out).not.toContain('V39');
});
