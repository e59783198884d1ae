import fc from 'fast-check';
import { expect, test } from 'vitest';
import { selectQuantile } from './select-quantile.ts';

test('is what stands there once the numbers are sorted', () => {
  fc.assert(
    fc.property(
      fc.array(fc.double({ noNaN: true, min: -1e6, max: 1e6 }), { minLength: 1, maxLength: 60 }),
      fc.double({ min: 0, max: 1, noNaN: true }),
      (numbers, share) => {
        const sorted = numbers.toSorted((a, b) => a - b);
        const place = share * (sorted.length - 1);
        const lower = sorted[Math.floor(place)]!;
        const upper = sorted[Math.ceil(place)]!;
        const expected = lower + (place - Math.floor(place)) * (upper - lower);
        expect(selectQuantile(Float64Array.from(numbers), share)).toBeCloseTo(expected, 6);
      },
    ),
    { seed: 5, numRuns: 400 },
  );
});

test('many equal numbers, and none', () => {
  expect(selectQuantile(new Float64Array(1000).fill(3), 0.975)).toBe(3);
  expect(selectQuantile(new Float64Array(0), 0.5)).toBeNaN();
});
