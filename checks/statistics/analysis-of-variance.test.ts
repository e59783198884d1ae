// Sources: NIST Statistical Reference Datasets, one-way analysis of variance; NIST e-Handbook 7.4.3 for the last example.
import { sampleDeviation } from '@pullbook/core/numeric';
import { betweenAndWithin } from '@pullbook/core/scatter';
import { describe, expect, test } from 'vitest';
import { readCsv, relativeError } from './read-csv.ts';

const rows = readCsv('analysis-of-variance.csv');

function groupsOf(set: string, raisedBy = 0): number[][] {
  const own = rows.filter(([name]) => name === set);
  const names = [...new Set(own.map(([, treatment]) => treatment))];
  return names.map((wanted) =>
    own.filter(([, treatment]) => treatment === wanted).map(([, , value]) => Number(value) + raisedBy),
  );
}

/**
 * Tolerances, relative. Plain doubles hold the data of AtmWtAg (107.8681568, scatter 1.5e-5) to 1e-14, which is 1e-9 of the scatter
 * for each value; 48 of them leave better than that.
 */
const sets = [
  {
    name: 'SiRstv',
    shape: [5, 25],
    between: 5.11462616e-2,
    within: 2.1663656e-1,
    df: [4, 20],
    f: 1.18046237440255,
    residual: 0.104076068334656,
    tolerance: 1e-11,
  },
  {
    name: 'AtmWtAg',
    shape: [2, 48],
    between: 3.638341875e-9,
    within: 1.04951729166667e-8,
    df: [1, 46],
    f: 15.946733567793,
    residual: 1.5104831444641e-5,
    tolerance: 1e-9,
  },
  {
    name: 'SmLs01',
    shape: [9, 189],
    between: 1.68,
    within: 1.8,
    df: [8, 180],
    f: 21,
    residual: 0.1,
    tolerance: 1e-13,
  },
];

test.each(sets)('$name', ({ name, shape, between, within, df, f, residual, tolerance }) => {
  const groups = groupsOf(name);
  expect([groups.length, groups.flat().length]).toEqual(shape);
  const found = betweenAndWithin(groups);
  expect([found.between.degreesOfFreedom, found.within.degreesOfFreedom]).toEqual(df);
  expect(relativeError(found.between.squares, between)).toBeLessThan(tolerance);
  expect(relativeError(found.within.squares, within)).toBeLessThan(tolerance);
  expect(relativeError(found.f!, f)).toBeLessThan(tolerance);
  const { squares, degreesOfFreedom } = found.within;
  expect(relativeError(Math.sqrt(squares / degreesOfFreedom), residual)).toBeLessThan(tolerance);
});

describe('SmLs01 raised by a constant has the same certified figures (SmLs04: a million, SmLs07: a million millions)', () => {
  // A double holds values near the level to half an ulp: 5.8e-11 and 6.1e-5. Differences of 0.1 carry that much, and over 189 values
  // with errors of either sign a square's relative error stays under twice their ratio.
  test.each([
    { level: 1e6, ulp: 1.2e-10 },
    { level: 1e12, ulp: 1.3e-4 },
  ])('$level', ({ level, ulp }) => {
    const found = betweenAndWithin(groupsOf('SmLs01', level));
    const tolerance = (2 * ulp) / 0.1;
    expect(relativeError(found.between.squares, 1.68)).toBeLessThan(tolerance);
    expect(relativeError(found.within.squares, 1.8)).toBeLessThan(tolerance);
    expect(relativeError(found.f!, 21)).toBeLessThan(2 * tolerance);
  });
});

test('example of the e-Handbook: F is 9.59, p 0.0032', () => {
  const found = betweenAndWithin([
    [6.9, 5.4, 5.8, 4.6, 4.0],
    [8.3, 6.8, 7.8, 9.2, 6.5],
    [8.0, 10.5, 8.1, 6.9, 9.3],
  ]);
  expect(found.f).toBeCloseTo(9.59, 2);
  // Digits beyond the printed ones computed outside this project.
  expect(relativeError(found.f!, 9.591107)).toBeLessThan(1e-6);
  expect(relativeError(found.p!, 0.003248)).toBeLessThan(2e-4);
});

test('two groups: F is the square of the pooled t, with its p (Student’s sleep data, from memory)', () => {
  const found = betweenAndWithin([
    [0.7, -1.6, -0.2, -1.2, -0.1, 3.4, 3.7, 0.8, 0, 2.0],
    [1.9, 0.8, 1.1, 0.1, -0.1, 4.4, 5.5, 1.6, 4.6, 3.4],
  ]);
  expect(relativeError(found.f!, 1.8608 ** 2)).toBeLessThan(1e-4);
  expect(relativeError(found.p!, 0.07919)).toBeLessThan(1e-4);
});

test('groups of one, alike or single say nothing', () => {
  expect(betweenAndWithin([[1], [2]])).toMatchObject({ f: null, p: null });
  expect(betweenAndWithin([[1, 2], []])).toMatchObject({
    between: { squares: 0, degreesOfFreedom: 0 },
    f: null,
  });
  expect(
    betweenAndWithin([
      [1, 1],
      [2, 2],
    ]),
  ).toMatchObject({ within: { squares: 0 }, f: null });
  expect(
    betweenAndWithin([
      [1, 3],
      [3, 1],
    ]),
  ).toMatchObject({ f: 0, p: 1 });
  expect(() => betweenAndWithin([])).toThrow(RangeError);
  expect(() => betweenAndWithin([[1, Number.NaN]])).toThrow('a value is NaN');
});

test('within alone is the sample’s variance', () => {
  const values = [2.0, 1.5, 3.0, 2.5, 1.0];
  expect(betweenAndWithin([values]).within.squares / 4).toBeCloseTo(sampleDeviation(values)! ** 2, 14);
});
