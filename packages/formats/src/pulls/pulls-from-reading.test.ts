import { describe, expect, test } from 'vitest';
import type { ColumnMapping } from '../model.ts';
import { readingOf } from '../test-bytes.ts';
import { guessedMapping } from './guessed-mapping.ts';
import { pullsFromReading } from './pulls-from-reading.ts';

const reading = readingOf('a;b;c;note\n2000;300;10;x\n2100;310;12;y\n2200;305;14;z\n', 'a pull.csv');
const mapping = (...entries: [number, ColumnMapping['meaning'], string][]): ColumnMapping[] =>
  entries.map(([index, meaning, unit]) => ({ index, meaning, unit }));

test('channels come in inside units, and the file names the pull', () => {
  const pulls = pullsFromReading(
    reading,
    mapping([0, 'engineSpeed', 'rpm'], [1, 'torque', 'lb-ft'], [2, 'boost', 'psi']),
  );
  const [pull] = pulls.ok ? pulls.value : [];
  expect(pull?.name).toBe('a pull');
  // 1 lbf·ft = 1.355 817 948 331 4 N·m, 1 psi = 6894.757 293 Pa: NIST SP 811, appendix B (digits from memory).
  expect(pull?.channels[1]?.values[0]).toBeCloseTo(300 * 1.3558179483314, 8);
  expect(pull?.channels[2]?.values[0]).toBeCloseTo(10 * 6894.757293168, 5);
  expect(pull?.channels.map(({ kind, unit }) => [kind, unit])).toEqual([
    ['engineSpeed', 'rpm'],
    ['torque', 'lb-ft'],
    ['gaugePressure', 'psi'],
  ]);
});

test('what is not understood is kept with its own unit, unconverted', () => {
  const pulls = pullsFromReading(
    reading,
    mapping([0, 'engineSpeed', 'rpm'], [1, 'torque', 'Nm'], [2, 'other', 'furlong']),
  );
  const channel = pulls.ok ? pulls.value[0]?.channels[2] : undefined;
  expect(channel).toMatchObject({ name: 'c', unit: 'furlong', meaning: 'other' });
  expect([...(channel?.values ?? [])]).toEqual([10, 12, 14]);
});

test.each<[string, ColumnMapping[], string, RegExp]>([
  ['no engine speed', mapping([1, 'torque', 'Nm']), 'no-engine-speed', /Say which of “a”, “b”, “c”/],
  [
    'an unknown unit',
    mapping([0, 'engineSpeed', 'rpm'], [1, 'torque', 'furlong']),
    'unknown-unit',
    /“b”.*“furlong”.*Allowed: N·m, lb-ft/,
  ],
  [
    'no unit',
    mapping([0, 'engineSpeed', 'rpm'], [1, 'torque', '']),
    'unknown-unit',
    /has no unit. Allowed: N·m/,
  ],
  [
    'one meaning twice',
    mapping([0, 'engineSpeed', 'rpm'], [1, 'torque', 'Nm'], [2, 'torque', 'Nm']),
    'mapped-twice',
    /“b” and “c” are both mapped to torque/,
  ],
  [
    'a column that is not there',
    mapping([0, 'engineSpeed', 'rpm'], [9, 'torque', 'Nm']),
    'no-such-column',
    /has 4/,
  ],
  [
    'an unknown meaning',
    mapping([0, 'engineSpeed', 'rpm'], [1, 'twist' as 'torque', 'Nm']),
    'unknown-meaning',
    /Allowed: time, engineSpeed/,
  ],
])('%s is refused with what is allowed', (_, entries, code, message) => {
  const result = pullsFromReading(reading, entries);
  expect(result.ok).toBe(false);
  expect(result.remarks[0]).toMatchObject({ code, level: 'refusal' });
  expect(result.remarks[0]?.message).toMatch(message);
}); // prettier-ignore

describe('impossible values', () => {
  const long = (bad: number) =>
    readingOf(
      `rpm,Nm\n${Array.from({ length: 400 }, (_, row) => `${row < bad ? 65_535 : 2000 + row * 10},300`).join('\n')}\n`,
    );

  test('a handful in a long log count as missing, with a caution', () => {
    const result = pullsFromReading(long(2), guessedMapping(long(2)));
    expect(result.ok && Number.isNaN(result.value[0]?.channels[0]?.values[0])).toBe(true);
    expect(result.remarks[0]).toMatchObject({
      code: 'impossible-value',
      level: 'caution',
      line: 2,
      column: 1,
    });
  });

  test('many refuse the file', () => {
    const result = pullsFromReading(long(40), mapping([0, 'engineSpeed', 'rpm'], [1, 'torque', 'Nm']));
    expect(result.ok).toBe(false);
    expect(result.remarks[0]?.message).toContain('65535 rpm; engine speed can lie between 0 and 30000 rpm');
  });

  test('in a channel that is not decisive they stay, with a caution', () => {
    const oil = readingOf('rpm,Nm,oil temp [°C]\n2000,300,90\n2100,301,9000\n');
    const result = pullsFromReading(oil, guessedMapping(oil));
    expect(result.ok && result.value[0]?.channels[2]?.values[1]).toBe(9273.15);
    expect(result.remarks[0]).toMatchObject({
      code: 'impossible-value',
      level: 'caution',
      line: 3,
      column: 3,
    });
  });
});

test('a block with one row is left out of several, with a caution', () => {
  const several = readingOf('run,rpm,Nm\nbase,2000,300\nbase,2100,301\nother,2000,\nother,2100,310\n');
  const result = pullsFromReading(several, guessedMapping(several));
  expect(result.ok && result.value.map(({ name }) => name)).toEqual(['base']);
  expect(result.remarks[0]).toMatchObject({ code: 'one-row', level: 'caution', line: 4 });
});
