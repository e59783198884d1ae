import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  chiSquareCdf,
  chiSquareQuantile,
  fCdf,
  fQuantile,
  normalCdf,
  normalQuantile,
  studentTCdf,
  studentTQuantile,
} from './index.ts';

const share = fc.double({ min: 1e-9, max: 1 - 1e-9, noNaN: true });
/** Degrees of freedom evenly on a logarithmic scale, 0.3 to a hundred thousand. */
const degrees = fc.double({ min: -0.5, max: 5, noNaN: true }).map((power) => 10 ** power);

/** Of a share and of what is above it: a last digit of either moves the quantile no further than this. */
const close = (found: number, wanted: number) =>
  Math.abs(found - wanted) <= 1e-10 * Math.min(wanted, 1 - wanted) + 4e-16;

describe('the share below the quantile of a share is that share, and quantiles rise', () => {
  const cases = [
    { name: 'normal', cdf: (x: number) => normalCdf(x), quantile: (p: number) => normalQuantile(p) },
    { name: 'Student’s t', cdf: studentTCdf, quantile: studentTQuantile },
    { name: 'chi-squared', cdf: chiSquareCdf, quantile: chiSquareQuantile },
    { name: 'F', cdf: fCdf, quantile: fQuantile },
  ];
  test.each(cases)('$name', ({ cdf, quantile }) => {
    fc.assert(
      fc.property(share, share, degrees, degrees, (one, other, above, below) => {
        expect(close(cdf(quantile(one, above, below), above, below), one)).toBe(true);
        const [low, high] = [Math.min(one, other), Math.max(one, other)];
        expect(quantile(low, above, below)).toBeLessThanOrEqual(quantile(high, above, below));
      }),
      { seed: 6, numRuns: 200 },
    );
  });
});

test('a million degrees of freedom are nearly, and Infinity exactly, a scatter that is known', () => {
  expect(studentTCdf(1.5, 1e9)).toBeCloseTo(normalCdf(1.5), 9);
  expect(studentTCdf(1.5, Number.POSITIVE_INFINITY)).toBe(normalCdf(1.5));
  expect(fCdf(1.7, 4, 1e9)).toBeCloseTo(chiSquareCdf(6.8, 4), 8);
  expect(fCdf(1.7, 4, Number.POSITIVE_INFINITY)).toBe(chiSquareCdf(6.8, 4));
  expect(fQuantile(0.3, Number.POSITIVE_INFINITY, 4)).toBeCloseTo(4 / chiSquareQuantile(0.7, 4), 12);
});

test('from a hundred million degrees of freedom on nothing drifts', () => {
  // 97.5 % points by the expansion in 1 / df to two terms, mpmath 1.3.0 at 40 digits.
  for (const [df, point] of [
    [1e8, 1.9599640082627667],
    [1e9, 1.9599639869123255],
    [1e12, 1.9599639845424266],
    [1e18, 1.9599639845400543],
  ] as const) {
    expect(Math.abs(studentTQuantile(0.975, df) / point - 1)).toBeLessThan(1e-13);
    expect(Math.abs((1 - studentTCdf(point, df)) / 0.025 - 1)).toBeLessThan(1e-12);
    expect(studentTCdf(-point, df)).toBeCloseTo(0.025, 13);
  }
  const known = Number.POSITIVE_INFINITY;
  expect(studentTQuantile(0.975, Number.MAX_VALUE)).toBe(studentTQuantile(0.975, known));
  expect(fQuantile(0.75, 3, Number.MAX_VALUE)).toBe(fQuantile(0.75, 3, known));
  expect(fQuantile(0.75, 3, 9.9e11)).toBeCloseTo(fQuantile(0.75, 3, known), 10);
  expect(fCdf(1.7, Number.MAX_VALUE, 3)).toBe(fCdf(1.7, known, 3));
});

test('what is no share and no count of degrees of freedom throws', () => {
  for (const p of [0, 1, -0.1, 1.1, Number.NaN]) {
    expect(() => normalQuantile(p)).toThrow(RangeError);
    expect(() => studentTQuantile(p, 4)).toThrow(RangeError);
    expect(() => fQuantile(p, 4, 4)).toThrow(RangeError);
    expect(() => chiSquareQuantile(p, 4)).toThrow(RangeError);
  }
  for (const df of [0, -1, Number.NaN]) {
    expect(() => studentTCdf(1, df)).toThrow('degrees of freedom');
    expect(() => fCdf(1, df, 4)).toThrow('degrees of freedom above');
    expect(() => fCdf(1, 4, df)).toThrow('degrees of freedom below');
    expect(() => chiSquareCdf(1, df)).toThrow('degrees of freedom');
  }
  expect(() => studentTCdf(Number.NaN, 4)).toThrow('Student t is NaN');
  expect(() => fCdf(-1, 4, 4)).toThrow('ratio of variances is -1');
});
