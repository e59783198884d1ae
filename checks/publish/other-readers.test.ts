import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { makeDemoBook } from '@pullbook/workshop';
import readWorkbook from 'read-excel-file/node';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { capturedJson } from '../../apps/cli/src/testing/captured.ts';
import { type Comparison, shownOf } from './read-files.ts';

/** The demo's report, still and tables as programs read them that are not ours: poppler's tools, and read-excel-file 9.3.17. */
const CAM = 'What does the longer cam add at the same pulley?';
const folder = mkdtempSync(join(tmpdir(), 'pullbook-readers-'));
const hasPoppler = ['pdfinfo', 'pdftotext'].every((name) => spawnSync(name, ['-v']).error === undefined);
afterAll(() => rmSync(folder, { recursive: true, force: true }));

let shown: Comparison & { sentence: string };
let files: { path: string; kind: string }[];
beforeAll(async () => {
  const book = join(folder, 'demo');
  await makeDemoBook(book);
  [shown] = (await shownOf(book, CAM)) as [typeof shown];
  const kinds = ['--kind', 'report,still,table', '--picture', 'table', '--format', 'pdf,xlsx'];
  const argv = ['publish', CAM, '--draft', ...kinds, '--units', 'si', '--out', join(folder, 'out')];
  const { code, json } = await capturedJson([...argv, '--book', book]);
  expect(code).toBe(0);
  files = json.files;
}, 120_000);

const pathOf = (kind: string): string => files.find((one) => one.kind === kind)!.path;
const told = (program: string, ...argv: string[]): string =>
  spawnSync(program, argv, { encoding: 'utf8' }).stdout.replaceAll(/[\s\u00a0\u202f]+/gu, ' ');

test.skipIf(!hasPoppler)(
  'a report as PDF: pages of A4, its title, and the words and figures of the answer',
  () => {
    const info = told('pdfinfo', pathOf('report'));
    expect(info).toMatch(/Page size: 595\.2\d x 841\.8\d pts \(A4\)/u);
    expect(Number(/Pages: (\d+)/u.exec(info)?.[1])).toBeGreaterThan(1);
    expect(info).toContain(CAM);
    const words = told('pdftotext', '-layout', pathOf('report'), '-');
    expect(words).toContain('Invented data');
    for (const section of ['Calibration', 'Cautions', 'SAE J1349'])
      expect(words).toMatch(new RegExp(section, 'iu'));
    // The gain and both highest powers, in whole kW.
    for (const kw of [shown.meanGainKw, shown.changedPeak.peakPowerKw!])
      expect(words).toMatch(new RegExp(`\\b${Math.round(kw)}(?:\\.\\d)? kW`, 'u'));
  },
);

test.skipIf(!hasPoppler)('a still as PDF: one page of its size, each figure of its table a text', () => {
  expect(told('pdfinfo', pathOf('still'))).toMatch(/Pages: 1 .*Page size: 1920 x 1080 pts/u);
  const words = told('pdftotext', '-layout', pathOf('still'), '-');
  const rows = shown.curve.filter(({ engineSpeedRpm }) => engineSpeedRpm % 500 === 0);
  expect(rows.length).toBeGreaterThan(5);
  for (const { engineSpeedRpm, baselineKw, changedKw } of rows) {
    expect(words).toContain(engineSpeedRpm.toLocaleString('en-US'));
    for (const kw of [baselineKw!, changedKw!]) expect(words).toContain(` ${kw.toFixed(1)} `);
  }
});

test('the workbook has the compared curves to the last digit, as numbers with their units', async () => {
  const sheets = await readWorkbook(readFileSync(pathOf('table')));
  const cells = sheets.flatMap(({ data }) => data);
  expect(cells.flat().some((cell) => typeof cell === 'string' && /\[kW\]/u.test(cell))).toBe(true);
  let held = 0;
  for (const { engineSpeedRpm, baselineKw, changedKw } of shown.curve) {
    const row = cells.find(
      (one) => one.includes(engineSpeedRpm) && one.some((cell) => near(cell, baselineKw!)),
    );
    expect(row, String(engineSpeedRpm)).toBeDefined();
    expect(
      row!.some((cell) => near(cell, changedKw!)),
      String(engineSpeedRpm),
    ).toBe(true);
    held += 1;
  }
  expect(held).toBeGreaterThan(50);
});

const near = (cell: unknown, value: number): boolean =>
  typeof cell === 'number' && Math.abs(cell - value) <= 1e-12 * Math.abs(value);
