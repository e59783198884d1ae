import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { formatNumber } from './format.ts';
import { parseNumber } from './parse-number.ts';

describe('with either mark', () => {
  test.each([
    ['29.92', 29.92],
    ['29,92', 29.92],
    ['0,85', 0.85],
    ['0,850', 0.85],
    ['1,5', 1.5],
    ['1.234', 1.234],
    ['1,234.5', 1234.5],
    ['1.234,5', 1234.5],
    ['1234,567', 1234.567],
    ['1,234,567', 1_234_567],
    ['6 500', 6500],
    ['6\u202f500,25', 6500.25],
    ['−3.5', -3.5],
    ['.5', 0.5],
    ['5.', 5],
    ['1e5', 100_000],
  ])('%s', (text, value) => expect(parseNumber(text, 'either')).toBe(value));

  test.each(['1,234', '-12,345', '999,000'])('%s could be two numbers', (text) =>
    expect(parseNumber(text, 'either')).toBeNull(),
  );

  test.each(['', 'x', '1,2,3', '1.2.3', '--1', '12,34,567.8', '1 23', '1e400', '0x10', 'Infinity'])(
    '"%s" is none',
    (text) => expect(parseNumber(text, 'either')).toBeNull(),
  );
});

test('with the mark given, one to three digits before three are no riddle', () => {
  expect(parseNumber('1,234', '.')).toBe(1234);
  expect(parseNumber('1,234', ',')).toBe(1.234);
  expect(parseNumber('29,92', '.')).toBeNull();
});

test('a number shown is read back, with either mark and with groups', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: -1e9, max: 1e9 }),
      fc.integer({ min: 0, max: 6 }),
      fc.constantFrom('.' as const, ',' as const),
      fc.boolean(),
      (scaled, decimals, mark, thousands) => {
        const value = scaled / 10 ** decimals;
        expect(parseNumber(formatNumber(value, decimals, mark, { thousands }), mark)).toBeCloseTo(
          value,
          decimals + 2,
        );
      },
    ),
    { seed: 2, numRuns: 1000 },
  );
});
