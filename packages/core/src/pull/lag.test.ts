import fc from 'fast-check';
import { expect, test } from 'vitest';
import { usableTime, withoutLag } from './lag.ts';

const time = Float64Array.from({ length: 200 }, (_, row) => row * 0.02);

test('a channel that came late is put back to where it belongs', () => {
  const happened = (t: number) => 5 * t + 2;
  const late = time.map((t) => happened(t - 0.3));
  const back = withoutLag(late, time, 0.3);
  back.forEach((value, row) => {
    if (Number.isFinite(value)) expect(value).toBeCloseTo(happened(time[row]!), 9);
  });
  expect(back.filter(Number.isNaN)).toHaveLength(15);
});

test('there and back by whole rows gives the same inside the ends', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 1, max: 20 }),
      fc.array(fc.double({ min: -1e3, max: 1e3, noNaN: true }), { minLength: 200, maxLength: 200 }),
      (rows, values) => {
        const lag = rows * 0.02;
        const back = withoutLag(withoutLag(Float64Array.from(values), time, lag), time, -lag);
        for (let row = rows + 1; row < 199 - rows; row++) expect(back[row]!).toBeCloseTo(values[row]!, 6);
      },
    ),
    { seed: 20260314, numRuns: 40 },
  );
});

test('time that stands still or has gaps is not relied on', () => {
  expect(usableTime(Float64Array.of(0, 1, 1, 2))).toBeNull();
  expect(usableTime(Float64Array.of(0, Number.NaN, 2))).toBeNull();
  expect(usableTime(Float64Array.of(0, 1, 2))).not.toBeNull();
});
