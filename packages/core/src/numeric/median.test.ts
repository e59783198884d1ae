import fc from 'fast-check';
import { expect, test } from 'vitest';
import { median, runningMedian, weightedMedian } from './median.ts';

test('half of the values lie on either side of the median, few or many', () => {
  fc.assert(
    fc.property(
      fc.array(fc.double({ noNaN: true, noDefaultInfinity: true }), { minLength: 1, maxLength: 90 }),
      (values) => {
        const middle = median(values);
        expect(values.filter((value) => value < middle).length).toBeLessThanOrEqual(values.length / 2);
        expect(values.filter((value) => value > middle).length).toBeLessThanOrEqual(values.length / 2);
      },
    ),
    { seed: 20260314 },
  );
});

test('missing values do not count; nothing has no median', () => {
  expect(median([Number.NaN, 3, 1, Number.NaN, 2])).toBe(2);
  expect(median([Number.NaN])).toBeNaN();
});

test('a running median leaves a straight line as it is, ends included', () => {
  const line = Float64Array.from({ length: 20 }, (_, row) => 3 * row);
  expect(runningMedian(line, 3)).toEqual(line);
});

test('a weighted median with whole weights is the median of repeated values', () => {
  expect(weightedMedian([10, 20, 30], [1, 5, 1])).toBe(20);
  expect(weightedMedian([10, 20, 30], [1, 1, 9])).toBe(30);
});
