import { readFileSync } from 'node:fs';
import { guessedMapping, pullsFromReading, readTextFile } from '@pullbook/formats';
import { describe, expect, test } from 'vitest';

function readingOf(name: string) {
  const bytes = new Uint8Array(readFileSync(new URL(name, import.meta.url)));
  const reading = readTextFile(bytes, name);
  if (!reading.ok) throw new Error(JSON.stringify(reading.remarks));
  return reading.value;
}

// Expected values were read from the files with Python's csv module and by eye, not with our reader.

describe('EPA engine map: quoted names over two lines, LF inside, CRLF between rows', () => {
  const reading = readingOf('quoted-header-crlf.csv');

  test('header, units and lines', () => {
    expect(reading.columns.map(({ name, unitText }) => [name, unitText])).toEqual([
      ['Speed', 'RPM'],
      ['Torque', 'Nm'],
      ['Fuel Rate', 'g/sec'],
      ['BSFC', 'g/kW*hr'],
      ['Efficiency', '%'],
    ]);
    expect(reading.layout).toMatchObject({ encoding: 'utf-8', headerLine: 1, firstDataLine: 7 });
    expect(reading.rowCount).toBe(8);
  });

  test('numbers', () => {
    expect(reading.columns.map(({ values }) => values[0])).toEqual([685, 14, 0.1848, 662.5, 12.6]);
    expect(reading.columns.map(({ values }) => values[1])).toEqual([685, 23.94, 0.2126, 445.8, 18.8]);
  });

  test('fuel flow comes in kg/s', () => {
    const pulls = pullsFromReading(reading, guessedMapping(reading));
    const fuel = pulls.ok && pulls.value[0]?.channels.find(({ meaning }) => meaning === 'fuelFlow');
    expect(fuel ? fuel.values[0] : null).toBeCloseTo(0.1848e-3, 12);
  });

  // Brake specific consumption = fuel rate ÷ power, so the file's own columns must agree under our units:
  // 0.2126 g/s ÷ (23.94 N·m × 685 r/min) = 445.7 g/(kW·h). The file prints four figures.
  test('the file agrees with itself under the units we read', () => {
    const pulls = pullsFromReading(reading, guessedMapping(reading));
    const channels = pulls.ok ? (pulls.value[0]?.channels ?? []) : [];
    const [speed, torque, fuel, consumption] = channels.map(({ values }) => values);
    for (let row = 0; row < 8; row++) {
      const power = (torque?.[row] ?? 0) * (speed?.[row] ?? 0) * ((2 * Math.PI) / 60);
      expect((fuel?.[row] ?? 0) / power / (consumption?.[row] ?? 0)).toBeCloseTo(1, 2);
    }
  });
});

describe('NASA compressor readings: 471 columns, names by letters and digits, a clock time', () => {
  const reading = readingOf('471-columns.csv');
  const column = (name: string) => reading.columns.find((one) => one.name === name);

  test('every column is there, and the last ones hold what they hold', () => {
    expect(reading.columns).toHaveLength(471);
    expect(reading.rowCount).toBe(4);
    expect([...(column('NMECH')?.values ?? [])]).toEqual([14984.7, 14970.1, 14981.9, 14984.2]);
    expect([...(column('TPR70')?.values ?? [])]).toEqual([
      1.9158923616608248, 2.110993399683261, 2.1801637068909554, 2.292598136282683,
    ]);
    expect([...(column('TCEXSET')?.values ?? [])]).toEqual([12.01941, 11.90436, 11.89633, 11.93857]);
  });

  test('09:57:37, 10:05:06, 10:08:37, 10:13:00 are seconds from the first', () => {
    expect([...(column('TIME')?.values ?? [])]).toEqual([0, 449, 660, 923]);
  });
});

describe('1985 car data: no header, question marks for missing values, words among the columns', () => {
  const reading = readingOf('no-header-question-marks.csv');

  test('26 columns, 12 rows, none taken for a header', () => {
    expect(reading.layout).toMatchObject({ headerLine: null, firstDataLine: 1 });
    expect([reading.columns.length, reading.rowCount]).toEqual([26, 12]);
    expect(reading.remarks.map(({ code }) => code)).toEqual(['no-header']);
  });

  test('missing values are counted, not invented', () => {
    // Column 2 (normalised losses): "?" in rows 1, 2, 3, 6, 8 and 10. Column 26 (price): "?" in row 10.
    expect([reading.columns[1]?.missing, reading.columns[25]?.missing]).toEqual([6, 1]);
    expect([...(reading.columns[1]?.values.slice(3, 5) ?? [])]).toEqual([164, 164]);
    // Column 22: horsepower.
    expect([...(reading.columns[21]?.values ?? [])]).toEqual([
      111, 111, 154, 102, 115, 110, 110, 110, 140, 160, 101, 101,
    ]);
  });
});
