import { describe, expect, test } from 'vitest';
import { chiSquareQuantile } from '../numeric/index.ts';
import { fitPrior } from './fit-prior.ts';

test('worked case: the formulas put into Python with SciPy, no code of this project', () => {
  const fit = fitPrior(
    [1.2e-5, 3.1e-5, 0.8e-5, 6.4e-5, 1.9e-5, 2.2e-5, 0.3e-5, 11e-5],
    [2, 2, 3, 2, 4, 5, 2, 3],
  )!;
  expect(fit.variance / 2.99576000168391e-5).toBeCloseTo(1, 10);
  expect(fit.degreesOfFreedom / 25.032453412633124).toBeCloseTo(1, 9);
});

test('variances that differ less than chance makes them: pooled, and as if known', () => {
  const fit = fitPrior([2, 2.1, 1.9, 2.4], [3, 3, 3, 6])!;
  expect(fit.variance).toBeCloseTo((2 * 3 + 2.1 * 3 + 1.9 * 3 + 2.4 * 6) / 15, 13);
  expect(fit.degreesOfFreedom).toBe(Number.POSITIVE_INFINITY);
});

describe('recovers what simulated variances were drawn from', () => {
  // The bands hold 99 of 100 such fits, by 600 fits of the same formulas in Python.
  test.each([
    { count: 2000, own: 2, prior: 8, deviation: [0.928, 1.07], few: 4.85, many: 22.5 },
    { count: 1000, own: 3, prior: 20, deviation: [0.936, 1.073], few: 8.7, many: Number.POSITIVE_INFINITY },
  ])('$count groups of $own, prior of $prior', ({ count, own, prior, deviation, few, many }) => {
    const chance = uniform(20261125);
    const variances = Array.from({ length: count }, () => {
      const level = (1.6e-5 * prior) / chiSquareQuantile(chance(), prior);
      return (level * chiSquareQuantile(chance(), own)) / own;
    });
    const fit = fitPrior(variances, new Array<number>(count).fill(own))!;
    const ratio = Math.sqrt(fit.variance / 1.6e-5);
    expect(ratio).toBeGreaterThan(deviation[0]!);
    expect(ratio).toBeLessThan(deviation[1]!);
    expect(fit.degreesOfFreedom).toBeGreaterThan(few);
    expect(fit.degreesOfFreedom).toBeLessThanOrEqual(many);
  });
});

test('one day of equal figures among eleven others does not halve the scatter; nothing but such days is none', () => {
  const others = [0.3, 0.8, 1.2, 1.6, 1.9, 2.2, 2.4, 3.1, 4, 6.4, 11].map((variance) => variance * 1e-5);
  const fit = (variances: number[]) => fitPrior(variances, new Array<number>(variances.length).fill(2))!;
  expect(Math.sqrt(fit([...others, 0]).variance / fit(others).variance)).toBeGreaterThan(0.5);
  expect(fitPrior([0, 0], [2, 2])).toEqual({ variance: 0, degreesOfFreedom: Number.POSITIVE_INFINITY });
});

test('fewer than two say nothing of how they differ; mistakes of the caller throw', () => {
  expect(fitPrior([], [])).toBeNull();
  expect(fitPrior([1e-5], [4])).toBeNull();
  expect(() => fitPrior([1, 2], [2])).toThrow('one each is needed');
  expect(() => fitPrior([1, -2], [2, 2])).toThrow('variance is -2');
  expect(() => fitPrior([1, 2], [2, 0])).toThrow('above 0');
});

/** Seeded, evenly between 0 and 1 without the ends (Park and Miller 1988, from memory). */
function uniform(seed: number): () => number {
  let state = seed % 2147483647;
  return () => {
    state = (state * 48271) % 2147483647;
    return state / 2147483647;
  };
}
