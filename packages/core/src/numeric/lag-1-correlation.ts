import { mean } from './mean.ts';

/**
 * Correlation of a row of values with itself one further on: sum of the products of neighbours' deviations over the sum of
 * squares. NaN where all values are equal. Definition of NIST's Statistical Reference Datasets, univariate.
 *
 * @example lag1Correlation([1, 3, 2]) // -0.5
 */
export function lag1Correlation(values: ArrayLike<number>): number {
  const centre = mean(Array.from(values));
  let products = 0;
  let squares = 0;
  for (let i = 0; i < values.length; i++) {
    const off = values[i]! - centre;
    squares += off * off;
    if (i > 0) products += off * (values[i - 1]! - centre);
  }
  return products / squares;
}
