import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { studentTQuantile } from '../numeric/student-t.ts';
import { equivalentDegreesOfFreedom } from './equivalent-degrees-of-freedom.ts';

const parts = (...given: [variance: number, degreesOfFreedom: number][]) =>
  given.map(([variance, degreesOfFreedom]) => ({ variance, degreesOfFreedom }));
const pointOf = (...given: [number, number][]) =>
  studentTQuantile(0.975, equivalentDegreesOfFreedom(parts(...given)));

describe('degrees of freedom of a sum of parts', () => {
  test('one part has its own exactly, and nothing has no end of them', () => {
    expect(equivalentDegreesOfFreedom(parts([3e-6, 4]))).toBe(4);
    expect(equivalentDegreesOfFreedom(parts([3e-6, 4], [0, 2]))).toBe(4);
    expect(equivalentDegreesOfFreedom([])).toBe(Number.POSITIVE_INFINITY);
    expect(equivalentDegreesOfFreedom(parts([0, 4]))).toBe(Number.POSITIVE_INFINITY);
    const known = parts([1, Number.POSITIVE_INFINITY], [2, Number.POSITIVE_INFINITY]);
    expect(equivalentDegreesOfFreedom(known)).toBe(Number.POSITIVE_INFINITY);
  });

  // Integral over one t of the other's distribution, by SciPy 1.17 (quad, brentq), to 1e-5.
  test.each([
    [[0.5, 4], [0.36, 8], 2.57162],
    [[0.5, 4], [0.5, 4], 2.78659],
    [[0.32, 20], [0.18, 20], 2.07786],
    [[0.9, 2], [0.1, 10], 4.12401],
    [[0.5, 4], [0.144, 14], 2.62651],
    [[0.7, 3], [0.3, 30], 2.8546],
  ] as [[number, number], [number, number], number][])('two parts %j and %j', (one, other, point) => {
    expect(Math.abs(pointOf(one, other) - point)).toBeLessThan(0.003);
  });

  test('one degree of freedom each, where the tails are longest', () => {
    expect(Math.abs(pointOf([1, 1], [1, 1]) / 17.96929 - 1)).toBeLessThan(0.003);
  });

  // Twenty times a million draws with NumPy; standard errors 0.0009 and 0.0007.
  test('four parts, three parts', () => {
    const far = pointOf([0.004 ** 2, 20], [0.005 ** 2, 8], [0.009 ** 2, 6], [0.02 ** 2, 4]);
    expect(Math.abs(far - 2.6661)).toBeLessThan(0.005);
    expect(Math.abs(pointOf([0.75, 4], [0.12, 9], [0.13, 6]) - 2.6538)).toBeLessThan(0.005);
  });

  test('unit and order of the parts do not matter; better known is never fewer', () => {
    const part = fc.tuple(fc.double({ min: 0.01, max: 1, noNaN: true }), fc.integer({ min: 2, max: 60 }));
    fc.assert(
      fc.property(fc.array(part, { minLength: 2, maxLength: 4 }), (given) => {
        const found = equivalentDegreesOfFreedom(parts(...given));
        const turned = equivalentDegreesOfFreedom(parts(...given.toReversed()));
        const smaller = given.map(([variance, degrees]): [number, number] => [variance * 1e-6, degrees]);
        const better = given.map(([variance, degrees]): [number, number] => [variance, degrees + 5]);
        expect(Math.abs(turned / found - 1)).toBeLessThan(0.02);
        expect(Math.abs(equivalentDegreesOfFreedom(parts(...smaller)) / found - 1)).toBeLessThan(0.02);
        expect(equivalentDegreesOfFreedom(parts(...better))).toBeGreaterThan(found);
      }),
      { seed: 20261125, numRuns: 60 },
    );
  });
});
