import fc from 'fast-check';
import { expect, test } from 'vitest';
import { spread } from './history.testing.ts';
import { moderate } from './moderate.ts';

test('variances weigh by their degrees of freedom, which add up', () => {
  // (20 × 16 + 2 × 20.25) / 22 = 16.386…
  const used = moderate(spread(0.004, 20, 'shop'), { sigma: 0.0045, degreesOfFreedom: 2 });
  expect(used.sigma).toBeCloseTo(Math.sqrt(360.5 / 22) * 1e-3, 12);
  expect(used).toMatchObject({ degreesOfFreedom: 22, historySetAside: false, from: 'shop' });
  expect(used.fromRepeats).toEqual({ sigma: 0.0045, degreesOfFreedom: 2 });
});

test('no repeats: history', () => {
  expect(moderate(spread(0.004, 20), null)).toEqual({
    sigma: 0.004,
    degreesOfFreedom: 20,
    fromRepeats: null,
    historySetAside: false,
    from: 'built-in',
  });
});

// The 75 % points of F by SciPy: 1.48698 for 2 and 20 degrees of freedom, 1.36945 for 3 and a known scatter.
test.each([
  [2, 20, 1.48698],
  [4, 8, 1.66422],
  [1, 1, 5.82843],
  [1, 4, 1.8074],
  [1, 200, 1.33102],
  [1, Number.POSITIVE_INFINITY, 1.3233],
  [3, Number.POSITIVE_INFINITY, 1.36945],
])(
  'repeats of %i against history of %f are taken alone above a ratio of variances of %f',
  (df, known, point) => {
    const at = (ratio: number) =>
      moderate(spread(0.004, known), { sigma: 0.004 * Math.sqrt(ratio), degreesOfFreedom: df });
    expect(at(point * 0.9999).historySetAside).toBe(false);
    const above = at(point * 1.0001);
    expect(above.historySetAside).toBe(true);
    expect(above.sigma).toBeCloseTo(0.004 * Math.sqrt(point * 1.0001), 10);
    expect(above.degreesOfFreedom).toBe(df < 3 ? Math.min(df + known, 3) : df);
  },
);

test('a history known for certain stays, and so does "none of this"', () => {
  const repeats = { sigma: 0.003, degreesOfFreedom: 5 };
  expect(moderate(spread(0.004, Number.POSITIVE_INFINITY), repeats)).toMatchObject({
    sigma: 0.004,
    degreesOfFreedom: Number.POSITIVE_INFINITY,
  });
  expect(moderate(spread(0, 4), repeats)).toMatchObject({
    sigma: 0,
    degreesOfFreedom: 4,
    historySetAside: false,
  });
});

test('the spread used lies between history and repeats', () => {
  const sigma = fc.double({ min: 1e-4, max: 0.05, noNaN: true });
  const df = fc.double({ min: 0.5, max: 60, noNaN: true });
  fc.assert(
    fc.property(sigma, df, sigma, df, (before, known, found, own) => {
      const used = moderate(spread(before, known), { sigma: found, degreesOfFreedom: own });
      expect(used.sigma).toBeGreaterThanOrEqual(Math.min(before, found) * (1 - 1e-12));
      expect(used.sigma).toBeLessThanOrEqual(Math.max(before, found) * (1 + 1e-12));
    }),
    { seed: 4 },
  );
});

test('mistakes of the caller throw', () => {
  expect(() => moderate(spread(-1, 4), null)).toThrow('sigma of history is -1');
  expect(() => moderate(spread(1, 0), null)).toThrow('above 0');
  expect(() => moderate(spread(1, 4), { sigma: 1, degreesOfFreedom: 0 })).toThrow('above 0');
  expect(() => moderate(spread(1, 4), { sigma: Number.NaN, degreesOfFreedom: 2 })).toThrow(
    'sigma of repeats',
  );
});
