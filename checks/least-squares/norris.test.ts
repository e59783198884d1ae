// Source: NIST Statistical Reference Datasets, linear regression, set Norris (36 observations): data and certified
// values, as quoted verbatim by the tests of a public statistics library.
import { fitPolynomial } from '@pullbook/core/numeric';
import { expect, test } from 'vitest';

const x = [
  0.2, 337.4, 118.2, 884.6, 10.1, 226.5, 666.3, 996.3, 448.6, 777.0, 558.2, 0.4, 0.6, 775.5, 666.9, 338.0,
  447.5, 11.6, 556.0, 228.1, 995.8, 887.6, 120.2, 0.3, 0.3, 556.8, 339.1, 887.2, 999.0, 779.0, 11.1, 118.3,
  229.2, 669.1, 448.9, 0.5,
];
const y = [
  0.1, 338.8, 118.1, 888.0, 9.2, 228.1, 668.5, 998.5, 449.1, 778.9, 559.2, 0.3, 0.1, 778.1, 668.8, 339.3,
  448.9, 10.8, 557.7, 228.3, 998.0, 888.8, 119.6, 0.3, 0.6, 557.6, 339.3, 888.0, 998.5, 778.9, 10.2, 117.6,
  228.9, 668.4, 449.2, 0.2,
];

test('line through Norris: certified parameters and their standard deviations', () => {
  const fit = fitPolynomial(x, y, 1)!;
  const [atCentre, slope] = fit.coefficients as [number, number];
  expect(x).toHaveLength(36);
  // 1e-10 relative: the certified figures have fifteen digits, plain double arithmetic keeps eleven or more here.
  expect(Math.abs(slope / 1.00211681802045 - 1)).toBeLessThan(1e-10);
  expect(Math.abs((atCentre - slope * fit.centre) / -0.262323073774029 - 1)).toBeLessThan(1e-9);
  const covariance = fit.covariance!;
  expect(Math.abs(Math.sqrt(covariance[1]![1]!) / 4.29796848199937e-4 - 1)).toBeLessThan(1e-10);
  const atZero =
    covariance[0]![0]! - 2 * fit.centre * covariance[0]![1]! + fit.centre ** 2 * covariance[1]![1]!;
  expect(Math.abs(Math.sqrt(atZero) / 0.232818234301152 - 1)).toBeLessThan(1e-9);
});
