// Source: NIST Statistical Reference Datasets, univariate summary statistics. Certified to fifteen digits.
import { lag1Correlation, mean, sampleDeviation } from '@pullbook/core/numeric';
import { describe, expect, test } from 'vitest';
import { readCsv, relativeError } from './read-csv.ts';

const rows = readCsv('univariate.csv');
const fileSet = (name: string) => rows.filter(([set]) => set === name).map(([, value]) => Number(value));

/** A value, then two others in turn, 500 times. */
const alternating = (first: number, low: number, high: number) => [
  first,
  ...Array.from({ length: 1000 }, (_, i) => (i % 2 === 0 ? low : high)),
];

/** Tolerances: doubles hold the data of NumAcc3 to 1.2e-10 and of NumAcc4 to 1.9e-9, a deviation of 0.1 no better than that over it. */
const sets = [
  {
    name: 'Michelso',
    values: fileSet('Michelso'),
    count: 100,
    level: 299.8524,
    deviation: 0.0790105478190518,
    lag1: 0.535199668621283,
    within: 1e-12,
  },
  {
    name: 'Mavro',
    values: fileSet('Mavro'),
    count: 50,
    level: 2.001856,
    deviation: 0.000429123454003053,
    lag1: 0.937989183438248,
    within: 1e-12,
  },
  {
    name: 'NumAcc1',
    values: fileSet('NumAcc1'),
    count: 3,
    level: 10000002,
    deviation: 1,
    lag1: -0.5,
    within: 1e-15,
  },
  {
    name: 'NumAcc2',
    values: alternating(1.2, 1.1, 1.3),
    count: 1001,
    level: 1.2,
    deviation: 0.1,
    lag1: -0.999,
    within: 1e-14,
  },
  {
    name: 'NumAcc3',
    values: alternating(1000000.2, 1000000.1, 1000000.3),
    count: 1001,
    level: 1000000.2,
    deviation: 0.1,
    lag1: -0.999,
    within: 1e-9,
  },
  {
    name: 'NumAcc4',
    values: alternating(10000000.2, 10000000.1, 10000000.3),
    count: 1001,
    level: 10000000.2,
    deviation: 0.1,
    lag1: -0.999,
    within: 1e-8,
  },
];

describe.each(sets)('$name', ({ values, count, level, deviation, lag1, within }) => {
  test('has the rows it should', () => expect(values).toHaveLength(count));
  test('mean', () => expect(relativeError(mean(values), level)).toBeLessThan(1e-15));
  test('standard deviation', () =>
    expect(relativeError(sampleDeviation(values)!, deviation)).toBeLessThan(within));
  test('correlation with the next value', () =>
    expect(relativeError(lag1Correlation(values), lag1)).toBeLessThan(Math.max(within, 1e-12)));
});

test('a moved value is seen by the correlation alone', () => {
  const values = fileSet('Michelso');
  const moved = [...values.slice(50), ...values.slice(0, 50)];
  expect(relativeError(sampleDeviation(moved)!, 0.0790105478190518)).toBeLessThan(1e-12);
  expect(relativeError(lag1Correlation(moved), 0.535199668621283)).toBeGreaterThan(1e-3);
});
