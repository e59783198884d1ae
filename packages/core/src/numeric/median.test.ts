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

test('the median of a long series is the middle of the sorted one', () => {
  fc.assert(
    fc.property(
      fc.array(
        fc.oneof(fc.integer({ min: -5, max: 5 }), fc.double({ noNaN: true, noDefaultInfinity: true })),
        {
          minLength: 101,
          maxLength: 400,
        },
      ),
      (values) => {
        const ascending = values.toSorted((a, b) => a - b);
        const half = ascending.length >> 1;
        const middle =
          ascending.length % 2 === 1 ? ascending[half]! : (ascending[half - 1]! + ascending[half]!) / 2;
        expect(median(values) - middle || 0).toBe(0);
      },
    ),
    { seed: 20261125 },
  );
});

test('values that are their own weights have the weighted median of any others', () => {
  fc.assert(
    fc.property(fc.array(fc.integer({ min: -3, max: 40 }), { minLength: 1, maxLength: 60 }), (values) => {
      expect(weightedMedian(values, values)).toBe(weightedMedian(values, [...values]));
    }),
    { seed: 20261125 },
  );
});
