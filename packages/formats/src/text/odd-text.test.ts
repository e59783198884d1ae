import { expect, test } from 'vitest';
import { guessedMapping, pullsFromReading, readTextFile } from '../index.ts';
import { bytesOfText, codesOf, readingOf } from '../test-bytes.ts';
import { cellNumber } from './cell-number.ts';
import { secondsFromFirst } from './clock-time.ts';

test.each([
  ['0.880', ',', 0.88],
  ['0,880', '.', 0.88],
  ['-0.880', ',', -0.88],
  ['1.880', ',', 1880],
  ['2\u2019000.5', '.', 2000.5],
  ["2'000,5", ',', 2000.5],
] as const)('%j in a file of decimal %j is %d', (cell, mark, value) => {
  expect(cellNumber(cell, mark)).toBe(value);
});

test('a clock of 12 hours that does not say am or pm turns from 12:59 to 1:00', () => {
  const seconds = Float64Array.of(46_798, 46_799, 3600, 3601);
  secondsFromFirst(seconds);
  expect([...seconds]).toEqual([0, 1, 2, 3]);
});

const sweep = Array.from({ length: 8 }, (_, row) => `${2000 + 500 * row},${300 + row}`);

test('engine speed that comes back to its start at once starts a new pull', () => {
  const reading = readingOf(['rpm,Nm', ...sweep, '', ...sweep].join('\n'));
  expect(reading.groups).toEqual([
    { name: 'Pull 1', fromRow: 0, toRow: 7 },
    { name: 'Pull 2', fromRow: 8, toRow: 15 },
  ]);
  expect(codesOf(reading)).toEqual(['starts-again']);
});

test.each([
  ['up and down', [...sweep, ...sweep.toReversed()]],
  ['out of order', [5, 0, 3, 1, 7, 2, 6, 4].map((row) => sweep[row]!)],
  ['each twice', sweep.flatMap((row) => [row, row])],
])('rows %s are one pull', (_, rows) => {
  expect(readingOf(['rpm,Nm', ...rows].join('\n')).groups).toHaveLength(1);
});

test('a row that begins with a word is no reading; one that begins with a mark for none is', () => {
  const rows = ['0.1,2000,300', '0.2,2500,310', 'n/a,3000,320', '0.4,3500,330', 'Highest,3500,330'];
  const reading = readingOf(['Time [s],rpm,Nm', ...rows].join('\n'));
  expect(reading.rowCount).toBe(4);
  expect(reading.remarks).toMatchObject([{ code: 'word-first-row', line: 6 }]);
});

test.each([
  ['<html><body>\n2000,300\n2100,305\n', 'a web page (HTML)'],
  ['<?xml version="1.0"?>\n<row a="1,2"/>\n', 'XML'],
  ['{"rpm": [2000, 2100]}\n', 'JSON'],
  ['{\\rtf1 2000, 300\\par\n', 'a document (RTF)'],
])('%j is refused by name', (text, what) => {
  const result = readTextFile(bytesOfText(text), 'run.csv');
  expect(result.remarks[0]).toMatchObject({ code: 'not-text', level: 'refusal' });
  expect(result.remarks[0]?.message).toContain(`run.csv is ${what}`);
});

test('a header in brackets is no JSON', () => {
  expect(readingOf('[rpm],[Nm]\n2000,300\n2100,305\n').rowCount).toBe(2);
});

test('figures with units on them are refused with the line and what stands there', () => {
  const result = readTextFile(bytesOfText('Speed,Torque\n2000 rpm,300 Nm\n2100 rpm,305 Nm\n'), 'run.csv');
  expect(result.remarks[0]).toMatchObject({ code: 'no-data' });
  expect(result.remarks[0]?.message).toContain('line 2 (“2000 rpm,300 Nm”)');
});

test('a file whose name is an ending alone still gives its pull a name', () => {
  const reading = readingOf('rpm,Nm\n2000,300\n2100,305\n', '.csv');
  const pulls = pullsFromReading(reading, guessedMapping(reading));
  expect(pulls.ok && pulls.value[0]?.name).toBe('Pull');
});
