import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { makeSamples, samplesReadme } from '../../../samples/make-samples.ts';
import { guessedMapping, pullsFromReading, readCombinationText, readTextFile } from './index.ts';

const folder = new URL('../../../samples/', import.meta.url);
const bytesOf = (path: string) => new Uint8Array(readFileSync(new URL(path, folder)));

describe('samples are what their script makes', () => {
  test.each(makeSamples())('$path', ({ path, bytes }) => expect(bytesOf(path)).toEqual(bytes));
  test('README.md', () =>
    expect(readFileSync(new URL('README.md', folder), 'utf8')).toBe(samplesReadme(makeSamples())));
});

const SWEEP = [2000, 293.1, 6500, 297.4]; // first and last engine speed (r/min) and torque (N·m) the script makes
const LOG = [2000, 293.3, 6500, 297.4];

// path | encoding | delimiter | decimal mark | line of the first row | pulls | rows of the first | channels | ends
test.each([
  ['comma/units-in-brackets.csv', 'utf-8', ',', '.', 2, 1, 19, 'engineSpeed torque power boost', SWEEP],
  [
    'comma/us-units.csv',
    'utf-8 with BOM',
    ',',
    '.',
    2,
    1,
    19,
    'engineSpeed torque power boost oilTemperature',
    SWEEP,
  ],
  ['comma/no-units.csv', 'utf-8', ',', '.', 2, 1, 19, 'engineSpeed torque power', SWEEP],
  ['comma/no-header.csv', 'utf-8', ',', '.', 1, 1, 19, 'engineSpeed torque power', SWEEP],
  ['comma/several-pulls.csv', 'utf-8', ',', '.', 2, 2, 19, 'engineSpeed torque power boost', SWEEP],
  ['comma/report-like.csv', 'utf-8', ',', '.', 5, 1, 19, 'engineSpeed torque power boost', SWEEP],
  [
    'semicolon-decimal-comma/german-names.csv',
    'utf-8',
    ';',
    ',',
    2,
    1,
    19,
    'engineSpeed torque power boost oilTemperature lambda',
    SWEEP,
  ],
  ['tab/lines-before-header.txt', 'utf-8', '\t', '.', 5, 1, 19, 'engineSpeed torque power boost', SWEEP],
  ['utf-16/little-endian.csv', 'utf-16le', ';', ',', 2, 1, 19, 'engineSpeed torque boost', SWEEP],
  ['utf-16/big-endian.csv', 'utf-16be', ',', '.', 2, 1, 19, 'engineSpeed torque power boost', SWEEP],
  ['utf-16/no-mark.csv', 'utf-16le', ',', '.', 2, 1, 19, 'engineSpeed torque power boost', SWEEP],
  [
    'latin-1/french-names.csv',
    'windows-1252',
    ';',
    ',',
    2,
    1,
    19,
    'engineSpeed torque power oilTemperature',
    SWEEP,
  ],
  [
    'units-row/units-under-names.csv',
    'utf-8',
    ',',
    '.',
    3,
    1,
    91,
    'time engineSpeed torque power manifoldPressure',
    LOG,
  ],
  [
    'quoted-line-breaks/header-over-two-lines.csv',
    'utf-8',
    ',',
    '.',
    6,
    1,
    19,
    'engineSpeed torque power boost',
    SWEEP,
  ],
  [
    'time-based/seconds.csv',
    'utf-8',
    ',',
    '.',
    2,
    1,
    91,
    'time engineSpeed torque boost oilTemperature',
    LOG,
  ],
  ['time-based/milliseconds.csv', 'utf-8', ',', '.', 2, 1, 91, 'time engineSpeed torque', LOG],
  ['time-based/clock.csv', 'utf-8', ';', ',', 2, 1, 91, 'time engineSpeed torque', LOG],
  ['speed-based/settled-points.csv', 'utf-8', ',', '.', 2, 1, 10, 'engineSpeed torque power boost', LOG],
  [
    'speed-based/falling.csv',
    'utf-8',
    ',',
    '.',
    2,
    1,
    19,
    'engineSpeed torque power boost',
    [6500, 297.4, 2000, 293.1],
  ],
  ['spaces/aligned.txt', 'utf-8', ' ', '.', 2, 1, 19, 'engineSpeed torque power', SWEEP],
  ['bar/pull.txt', 'utf-8', '|', '.', 2, 1, 19, 'engineSpeed torque power boost', SWEEP],
  [
    'open-data/full-load-curve-1.csv',
    'utf-8',
    ',',
    '.',
    2,
    1,
    19,
    'engineSpeed torque power',
    [1039.2, 139.16, 6562.5, 130],
  ],
  [
    'open-data/full-load-curve-2.csv',
    'utf-8',
    ',',
    '.',
    2,
    1,
    14,
    'engineSpeed torque power',
    [1001.38, 310.212, 4619.93, 313.08],
  ],
] as const)('%s', (path, encoding, delimiter, decimalMark, firstDataLine, count, rows, meanings, ends) => {
  const reading = readTextFile(bytesOf(path), path);
  if (!reading.ok) throw new Error(JSON.stringify(reading.remarks));
  expect(reading.value.layout).toMatchObject({ encoding, delimiter, decimalMark, firstDataLine });
  const pulls = pullsFromReading(reading.value, guessedMapping(reading.value));
  if (!pulls.ok) throw new Error(JSON.stringify(pulls.remarks));
  expect(pulls.value).toHaveLength(count);
  const channels = pulls.value[0]?.channels ?? [];
  expect(channels.map(({ meaning }) => meaning).join(' ')).toBe(meanings);
  expect(channels.map(({ values }) => values.length)).toEqual(channels.map(() => rows));
  const at = (meaning: string, row: number) =>
    channels.find((channel) => channel.meaning === meaning)?.values.at(row);
  expect([at('engineSpeed', 0), at('engineSpeed', -1)]).toEqual([ends[0], ends[2]]);
  // Torque of the US samples is printed in tenths of lb-ft.
  expect(Math.abs((at('torque', 0) ?? 0) - ends[1])).toBeLessThan(0.15 * 1.36);
  expect(Math.abs((at('torque', -1) ?? 0) - ends[3])).toBeLessThan(0.4);
}); // prettier-ignore

test.each([
  ['time-based/seconds.csv'],
  ['time-based/milliseconds.csv'],
  ['time-based/clock.csv'],
  ['units-row/units-under-names.csv'],
])('%s runs over 9 seconds', (path) => {
  const reading = readTextFile(bytesOf(path), path);
  const pulls = reading.ok ? pullsFromReading(reading.value, guessedMapping(reading.value)) : reading;
  const time = pulls.ok ? pulls.value[0]?.channels[0] : undefined;
  expect(time?.meaning).toBe('time');
  expect([time?.values[0], time?.values[10], time?.values[90]]).toEqual([0, 1, 9]);
});

test.each([
  ['invalid/empty.csv', 'empty-file', undefined, undefined],
  ['invalid/binary.csv', 'not-text', undefined, undefined],
  ['invalid/spreadsheet.csv', 'not-text', undefined, undefined],
  ['invalid/header-only.csv', 'no-data', undefined, undefined],
  ['invalid/one-row.csv', 'one-row', 2, undefined],
  ['invalid/no-speed.csv', 'no-engine-speed', 1, undefined],
  ['invalid/absurd-speed.csv', 'impossible-value', 8, 1],
  ['invalid/absurd-torque.csv', 'impossible-value', 5, 2],
])('%s is refused: %s', (path, code, line, column) => {
  const reading = readTextFile(bytesOf(path), path);
  const result = reading.ok ? pullsFromReading(reading.value, guessedMapping(reading.value)) : reading;
  expect(result.ok).toBe(false);
  expect(result.remarks[0]).toMatchObject({ code, level: 'refusal' });
  expect([result.remarks[0]?.line, result.remarks[0]?.column]).toEqual([line, column]);
});

test.each([
  ['combinations/straight-six.yaml', true, undefined, undefined],
  ['combinations/straight-six-supercharged.yaml', true, undefined, undefined],
  ['combinations/straight-six.json', true, undefined, undefined],
  ['combinations/missing-bore.yaml', true, undefined, undefined],
  ['combinations/invalid-wrong-unit.yaml', false, 'wrong-unit', 6],
  ['combinations/invalid-no-name.yaml', false, 'name-missing', undefined],
  ['combinations/invalid-syntax.yaml', false, 'sheet-syntax', 7],
  ['combinations/invalid-newer.yaml', false, 'schema-version-newer', 1],
])('%s', (path, ok, code, line) => {
  const read = readCombinationText(new TextDecoder().decode(bytesOf(path)), path);
  expect(read.ok).toBe(ok);
  if (!ok) expect([read.remarks[0]?.code, read.remarks[0]?.line]).toEqual([code, line]);
});
