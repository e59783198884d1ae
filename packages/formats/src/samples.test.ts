import { readFileSync } from 'node:fs';
import { acceptanceWindow } from '@pullbook/core/pull';
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
  ['gaps/missing-marks.csv', 'utf-8', ',', '.', 2, 1, 19, 'engineSpeed torque power boost lambda', SWEEP],
  ['gaps/empty-columns.csv', 'utf-8', ',', '.', 2, 1, 19, 'engineSpeed torque power', SWEEP],
  ['gaps/summary-rows-at-end.csv', 'utf-8', ';', ',', 2, 1, 19, 'engineSpeed torque power', SWEEP],
  ['gaps/repeated-header.csv', 'utf-8', ',', '.', 3, 1, 19, 'engineSpeed torque power', SWEEP],
  ['gaps/rows-twice.csv', 'utf-8', ',', '.', 2, 1, 182, 'time engineSpeed torque power', LOG],
  [
    'several-probes/one-name-twice.csv',
    'utf-8',
    ',',
    '.',
    2,
    1,
    19,
    `engineSpeed torque lambda lambda ${Array(8).fill('exhaustTemperature').join(' ')}`,
    SWEEP,
  ],
  [
    'several-probes/volume-flows.csv',
    'utf-8',
    ',',
    '.',
    2,
    1,
    19,
    'engineSpeed torque fuelVolumeFlow airVolumeFlow',
    SWEEP,
  ],
  ['time-based/clock-12-hours.csv', 'utf-8', ',', '.', 2, 1, 91, 'time engineSpeed torque', LOG],
  ['time-based/minutes-without-unit.csv', 'utf-8', ',', '.', 2, 1, 91, 'time engineSpeed torque', LOG],
  [
    'units-row/columns-in-another-order.csv',
    'utf-8',
    ',',
    '.',
    3,
    1,
    19,
    'power boost torque engineSpeed',
    SWEEP,
  ],
  ['spaces/aligned.txt', 'utf-8', ' ', '.', 2, 1, 19, 'engineSpeed torque power', SWEEP],
  ['spaces/gap-in-a-row.txt', 'utf-8', ' ', '.', 2, 1, 19, 'engineSpeed torque boost power', SWEEP],
  ['time-based/time-starts-again.csv', 'utf-8', ',', '.', 2, 2, 91, 'time engineSpeed torque', LOG],
  ['time-based/clock-12-hours-unsaid.csv', 'utf-8', ',', '.', 2, 1, 91, 'time engineSpeed torque', LOG],
  ['gaps/rows-named-by-words.csv', 'utf-8', ',', '.', 2, 1, 91, 'time engineSpeed torque', LOG],
  [
    'semicolon-decimal-comma/tens-of-newton-metres.csv',
    'utf-8',
    ';',
    ',',
    2,
    1,
    19,
    'engineSpeed torque power',
    SWEEP,
  ],
  [
    'comma/temperatures-without-units.csv',
    'utf-8',
    ',',
    '.',
    2,
    1,
    19,
    'engineSpeed torque power inletAirTemperature oilTemperature coolantTemperature',
    SWEEP,
  ],
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
  ['time-based/clock-12-hours.csv'],
  ['time-based/clock-12-hours-unsaid.csv'],
  ['time-based/time-starts-again.csv'],
  ['time-based/minutes-without-unit.csv'],
  ['units-row/units-under-names.csv'],
])('%s runs over 9 seconds', (path) => {
  const reading = readTextFile(bytesOf(path), path);
  const pulls = reading.ok ? pullsFromReading(reading.value, guessedMapping(reading.value)) : reading;
  const time = pulls.ok ? pulls.value[0]?.channels[0] : undefined;
  expect(time?.meaning).toBe('time');
  // Minutes are printed in millionths, 0.06 ms.
  for (const row of [0, 10, 90]) expect(time?.values[row]).toBeCloseTo(row / 10, 4);
});

test.each([
  ['invalid/empty.csv', 'empty-file', undefined, undefined],
  ['invalid/binary.csv', 'not-text', 1, undefined],
  ['invalid/spreadsheet.csv', 'not-text', 1, undefined],
  ['invalid/header-only.csv', 'no-data', 1, undefined],
  ['invalid/one-row.csv', 'one-row', 2, undefined],
  ['invalid/no-speed.csv', 'no-engine-speed', 1, undefined],
  ['invalid/absurd-speed.csv', 'impossible-value', 8, 1],
  ['invalid/absurd-torque.csv', 'impossible-value', 5, 2],
  ['invalid/one-column.csv', 'one-column', 2, 1],
  ['invalid/words-only.csv', 'no-data', 1, undefined],
  ['invalid/speed-all-missing.csv', 'no-engine-speed', 1, undefined],
  ['invalid/torque-in-millimetres.csv', 'impossible-value', 2, 2],
  ['invalid/web-page.csv', 'not-text', 1, undefined],
  ['invalid/json.csv', 'not-text', 1, undefined],
  ['invalid/decimal-comma-between-commas.csv', 'comma-in-numbers', 2, 4],
  ['invalid/on-its-side.csv', 'transposed', 1, 1],
  ['invalid/thousands-read-as-decimals.csv', 'impossible-value', 2, 1],
])('%s is refused: %s', (path, code, line, column) => {
  const reading = readTextFile(bytesOf(path), path);
  const result = reading.ok ? pullsFromReading(reading.value, guessedMapping(reading.value)) : reading;
  expect(result.ok).toBe(false);
  expect(result.remarks[0]).toMatchObject({ code, level: 'refusal' });
  expect([result.remarks[0]?.line, result.remarks[0]?.column]).toEqual([line, column]);
  // What to do about it, as the last sentence of the message says it.
  expect(result.remarks[0]?.message).toMatch(
    /\b(Export|Choose|choose|Say|Enter|Give|Save|save|Open|Mend|parted by)\b/,
  );
});

test('a file with two torques takes the observed one; both asked for are refused, with the place', () => {
  const path = 'speed-based/observed-and-corrected.csv';
  const reading = readTextFile(bytesOf(path), path);
  if (!reading.ok) throw new Error('refused');
  const guessed = guessedMapping(reading.value);
  expect(guessed.map(({ meaning }) => meaning)).toEqual(['engineSpeed', 'torque', 'other']);
  const both = guessed.with(2, { index: 2, meaning: 'torque', unit: 'N·m' });
  const refused = pullsFromReading(reading.value, both);
  expect(refused.ok).toBe(false);
  expect(refused.remarks[0]).toMatchObject({ code: 'mapped-twice', line: 1, column: 3 });
  expect(refused.remarks[0]?.message).toContain('Map one of them to something else, or leave it out.');
});

test('missing marks and words are missing readings, at their places, and the others stay', () => {
  const path = 'gaps/missing-marks.csv';
  const reading = readTextFile(bytesOf(path), path);
  const columns = reading.ok ? reading.value.columns : [];
  // Eleven ways to write nothing in the first eleven rows of boost; the words stand in rows 5 and 6 of lambda.
  const gaps = (at: number) =>
    [...columns[at]!.values.keys()].filter((row) => Number.isNaN(columns[at]!.values[row]));
  expect(gaps(3)).toEqual([0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10]);
  expect(gaps(4)).toEqual([4, 5]);
  expect(columns[3]?.values[18]).toBe(52);
});

test.each([
  ['combinations/straight-six.yaml', true, undefined, undefined],
  ['combinations/straight-six-supercharged.yaml', true, undefined, undefined],
  ['combinations/straight-six.json', true, undefined, undefined],
  ['combinations/missing-bore.yaml', true, undefined, undefined],
  ['combinations/cam-card-and-flow-sheet.yaml', true, undefined, undefined],
  ['combinations/invalid-flow-without-pressure.yaml', false, 'table-line-missing', 11],
  ['combinations/invalid-wrong-unit.yaml', false, 'wrong-unit', 6],
  ['combinations/invalid-no-name.yaml', false, 'name-missing', 1],
  ['combinations/invalid-syntax.yaml', false, 'sheet-syntax', 7],
  ['combinations/invalid-newer.yaml', false, 'schema-version-newer', 1],
])('%s', (path, ok, code, line) => {
  const read = readCombinationText(new TextDecoder().decode(bytesOf(path)), path);
  expect(read.ok).toBe(ok);
  if (!ok) expect([read.remarks[0]?.code, read.remarks[0]?.line]).toEqual([code, line]);
});

test('time-based/held-speeds.csv holds the ten speeds that its script makes', () => {
  const path = 'time-based/held-speeds.csv';
  const reading = readTextFile(bytesOf(path), path);
  const pulls = reading.ok ? pullsFromReading(reading.value, guessedMapping(reading.value)) : reading;
  const { holds } = acceptanceWindow(pulls.ok ? (pulls.value[0]?.channels ?? []) : []);
  const made = Array.from({ length: 10 }, (_, at) => 2000 + 500 * at);
  expect(holds?.map(({ speedRpm }) => speedRpm)).toEqual(made);
});

test('temperatures without a unit are one unit, that under which most are usual', () => {
  const path = 'comma/temperatures-without-units.csv';
  const reading = readTextFile(bytesOf(path), path);
  const columns = reading.ok ? reading.value.columns.slice(3) : [];
  expect(columns.map(({ guess }) => guess.unit)).toEqual(['°C', '°C', '°C']);
});

test('a row parted by blanks that lacks a reading has none, since it does not tell which', () => {
  const path = 'spaces/gap-in-a-row.txt';
  const reading = readTextFile(bytesOf(path), path);
  if (!reading.ok) throw new Error('refused');
  expect(reading.value.columns.map(({ values }) => values[4])).toEqual([NaN, NaN, NaN, NaN]);
  expect(reading.value.columns[3]?.missing).toBe(1);
  expect(reading.value.remarks).toMatchObject([{ code: 'short-row', level: 'caution', line: 6 }]);
});
