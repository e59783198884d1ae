// Sources: Dunnett 1964, two-sided 5 % points for several treatments against one control; studentized maximum modulus (Hahn and
// Hendrickson 1971), both from memory. Further values by SciPy's quadrature, by its multivariate normal and t, and by simulation.
import { studentTQuantile } from '@pullbook/core/numeric';
import { criticalLargestT } from '@pullbook/core/scatter';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

const ENDLESS = Number.POSITIVE_INFINITY;
const critical = (
  count: number,
  sharedShare: number,
  neighbourCorrelation: number,
  degreesOfFreedom: number,
  confidence = 0.95,
) => criticalLargestT({ count, sharedShare, neighbourCorrelation, degreesOfFreedom, confidence });

describe('Dunnett’s table, half of the variance in common', () => {
  test.each([
    { df: 5, row: [2.57, 3.03, 3.29, 3.48, 3.62, 3.73, 3.82, 3.9, 3.97] },
    { df: 10, row: [2.23, 2.57, 2.76, 2.89, 2.99, 3.07, 3.14, 3.19, 3.24] },
    { df: 20, row: [2.09, 2.38, 2.54, 2.65, 2.73, 2.8, 2.86, 2.9, 2.95] },
    { df: ENDLESS, row: [1.96, 2.21, 2.35, 2.44, 2.51, 2.57, 2.61, 2.65, 2.69] },
  ])('$df degrees of freedom, one to nine', ({ df, row }) => {
    // Half of the last printed digit, and what our own value may be off.
    row.forEach((printed, i) => {
      expect(Math.abs(critical(i + 1, 0.5, 0, df) - printed)).toBeLessThan(0.005 + 0.003);
    });
  });
});

describe('studentized maximum modulus, nothing in common', () => {
  test.each([
    { df: 5, row: [3.091, 3.399, 3.619, 3.789] },
    { df: 10, row: [2.609, 2.829, 2.984, 3.103] },
    { df: ENDLESS, row: [2.236, 2.388, 2.491, 2.569] },
  ])('$df degrees of freedom, two to five', ({ df, row }) => {
    row.forEach((printed, i) => {
      expect(Math.abs(critical(i + 2, 0, 0, df) - printed)).toBeLessThan(0.003);
    });
  });
});

// Mean over the shared part and over the standard error by SciPy's quadrature, root by its bisection: a different way to the same.
describe('many estimates with a common part, by SciPy', () => {
  test.each([
    { shared: 0.5, df: 5, row: [3.0302, 3.2932, 3.6151, 3.9701] },
    { shared: 0.5, df: ENDLESS, row: [2.2121, 2.349, 2.5115, 2.6862] },
    { shared: 0, df: 10, row: [2.6091, 2.8289, 3.1025, 3.4125] },
    { shared: 0.8, df: 5, row: [2.9041, 3.0858, 3.3012, 3.5317] },
    { shared: 0.8, df: 20, row: [2.3057, 2.423, 2.5605, 2.706] },
    { shared: 0.8, df: ENDLESS, row: [2.1524, 2.2543, 2.373, 2.498] },
  ])('$shared in common, $df degrees of freedom: two, three, five, nine', ({ shared, df, row }) => {
    [2, 3, 5, 9].forEach((count, i) => {
      expect(Math.abs(critical(count, shared, 0, df) - row[i]!)).toBeLessThan(0.002);
    });
  });
});

// The first two by SciPy's cumulative multivariate normal (resolved to 1e-5), the others by its quadrature as above.
test.each([
  { count: 4, shared: 0, rho: 0.8, df: ENDLESS, confidence: 0.95, found: 2.3636 },
  { count: 6, shared: 0.4, rho: 0.7, df: ENDLESS, confidence: 0.95, found: 2.4696 },
  { count: 2, shared: 0.5, rho: 0, df: 10, confidence: 0.99, found: 3.5313 },
  { count: 5, shared: 0.5, rho: 0, df: 10, confidence: 0.99, found: 3.9942 },
  { count: 2, shared: 0.5, rho: 0, df: 10, confidence: 0.8, found: 1.7099 },
  { count: 5, shared: 0.5, rho: 0, df: 10, confidence: 0.8, found: 2.1118 },
])('$count estimates, $shared in common, rho $rho, confidence $confidence, by SciPy', (row) => {
  const { count, shared, rho, df, confidence, found } = row;
  expect(Math.abs(critical(count, shared, rho, df, confidence) - found)).toBeLessThan(0.002);
});

// NumPy, generator seeded: the value below which the share of the largest lies, and its standard error.
describe('rows along the engine speed, by simulation', () => {
  test.each([
    { count: 60, shared: 0.5, rho: 0.85, df: 8, confidence: 0.95, found: 3.8693, error: 0.0011 },
    { count: 60, shared: 0.3, rho: 0.85, df: 24, confidence: 0.95, found: 3.3978, error: 0.00065 },
    { count: 60, shared: 0.6, rho: 0.95, df: ENDLESS, confidence: 0.95, found: 2.7003, error: 0.0012 },
    { count: 60, shared: 0.9, rho: 0.85, df: 10, confidence: 0.95, found: 2.9378, error: 0.002 },
    { count: 10, shared: 0, rho: 0.9, df: 12, confidence: 0.95, found: 2.9332, error: 0.0018 },
    { count: 25, shared: 0.2, rho: 0.7, df: 5, confidence: 0.8, found: 3.101, error: 0.00065 },
    { count: 30, shared: 0.8, rho: 0.5, df: 4, confidence: 0.9, found: 3.4329, error: 0.0011 },
    { count: 60, shared: 0.1, rho: 0.99, df: ENDLESS, confidence: 0.95, found: 2.5541, error: 0.0006 },
    { count: 27, shared: 0.2, rho: 0.992, df: 20, confidence: 0.98, found: 2.9357, error: 0.0013 },
    { count: 40, shared: 0.5, rho: 0.985, df: 8, confidence: 0.9, found: 2.45, error: 0.0008 },
  ])('$count nodes, $shared in common, rho $rho, $df degrees of freedom, $confidence', (row) => {
    const { count, shared, rho, df, confidence, found, error } = row;
    // What ours promises, and three standard errors of the simulation.
    expect(Math.abs(critical(count, shared, rho, df, confidence) - found)).toBeLessThan(0.003 + 3 * error);
  });
});

describe('limits it cannot pass', () => {
  const share = fc.double({ min: 0, max: 1, noNaN: true });
  const rho = fc.double({ min: 0, max: 0.98, noNaN: true });
  const count = fc.integer({ min: 1, max: 40 });
  const degrees = fc.double({ min: 1, max: 60, noNaN: true });

  test('at least one t, at most one t for each with its share of the error', () => {
    fc.assert(
      fc.property(count, share, rho, degrees, (n, shared, neighbours, df) => {
        const value = critical(n, shared, neighbours, df);
        expect(value).toBeGreaterThan(studentTQuantile(0.975, df) * 0.999);
        expect(value).toBeLessThan(studentTQuantile(1 - 0.025 / n, df) * 1.001);
      }),
      { seed: 8, numRuns: 60 },
    );
  });

  test('more estimates, less in common and less alike neighbours ask for more', () => {
    expect(critical(30, 0.4, 0.8, 8)).toBeGreaterThan(critical(20, 0.4, 0.8, 8));
    expect(critical(30, 0.4, 0.8, 8)).toBeGreaterThan(critical(30, 0.6, 0.8, 8));
    expect(critical(30, 0.4, 0.8, 8)).toBeGreaterThan(critical(30, 0.4, 0.9, 8));
    expect(critical(30, 0.4, 0.8, 8)).toBeGreaterThan(critical(30, 0.4, 0.8, 12));
    expect(critical(30, 0.4, 0.8, 8)).toBeGreaterThan(critical(30, 0.4, 0.8, 8, 0.9));
  });

  test('one estimate, or all of it in common, is Student’s t', () => {
    expect(critical(1, 0.3, 0.5, 7)).toBe(studentTQuantile(0.975, 7));
    expect(critical(50, 1, 0.5, 7)).toBe(studentTQuantile(0.975, 7));
  });

  test('mistakes of the caller throw', () => {
    expect(() => critical(0, 0.5, 0, 5)).toThrow('count of estimates is 0');
    expect(() => critical(2.5, 0.5, 0, 5)).toThrow('whole number');
    expect(() => critical(2, 1.5, 0, 5)).toThrow('shared share of the variance is 1.5');
    expect(() => critical(2, 0.5, 1, 5)).toThrow('correlation of neighbours is 1');
    expect(() => critical(2, 0.5, 0, 0)).toThrow('degrees of freedom is 0');
    expect(() => critical(2, 0.5, 0, 5, 1)).toThrow('confidence is 1');
  });
});
