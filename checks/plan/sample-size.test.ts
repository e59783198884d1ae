import { type DesignedPull, judgeDesign } from '@pullbook/core/plan';
import type { ScatterHistory, Spread } from '@pullbook/core/scatter';
import { expect, test } from 'vitest';

/** Pulls scatter by 1 %; nothing else does. `known`: degrees of freedom of that 1 %, besides those of the repeats. */
function onlyPulls(known: number): ScatterHistory {
  const none: Spread = { sigma: 0, degreesOfFreedom: Number.POSITIVE_INFINITY, from: 'stated' };
  return {
    pull: { sigma: 0.01, degreesOfFreedom: known, from: 'stated' },
    setUp: none,
    day: none,
    cell: none,
    within: { ...none, lengthRpm: 250 },
    driftPerHour: none,
  };
}

const each = (count: number): DesignedPull[] =>
  ['A', 'B'].flatMap((key) =>
    Array.from({ length: count }, () => ({ key, setUp: key, session: 'day', cell: 'cell', hours: 0 })),
  );

/** Odds to see a difference of so many standard deviations with that many pulls of each. */
function oddsOf(deviations: number, count: number, known: number): number {
  const pulls = each(count);
  return judgeDesign(pulls, [pulls.length], {
    baseline: 'A',
    history: onlyPulls(known),
    gainRatio: Math.expm1(0.01 * deviations),
    odds: 0.8,
  })!.odds;
}

/**
 * Without repeats nothing is learned, and the band is 1.96 standard errors: the textbook's (z.975 + z.80) s sqrt(2 / n) for one of
 * each, z from tables. The other tail, a gain taken for a loss, adds less than 1e-5 to the odds: the formula leaves it out.
 */
test('scatter known, one pull of each: the smallest difference is the textbook’s, and its odds are those asked for', () => {
  const smallest = judgeDesign(each(1), [2], {
    baseline: 'A',
    history: onlyPulls(Number.POSITIVE_INFINITY),
    gainRatio: 0.01,
    odds: 0.8,
  })!.smallest();
  expect(Math.log1p(smallest)).toBeCloseTo((1.959964 + 0.841621) * 0.01 * Math.sqrt(2), 5);
  expect(oddsOf(Math.log1p(smallest) / 0.01, 1, Number.POSITIVE_INFINITY)).toBeCloseTo(0.8, 6);
});

/**
 * Cohen, Statistical Power Analysis for the Behavioral Sciences, table 2.4.1, two-sided 5 %, power 80 %; four digits from memory.
 * A history of next to no degrees of freedom leaves the repeats alone.
 */
test.each([
  [0.5, 64, 0.80146],
  [0.8, 26, 0.80749],
  [1, 17, 0.80704],
])('scatter from the repeats alone: %f standard deviations, %i of each', (deviations, count, power) => {
  expect(oddsOf(deviations, count, 0.01)).toBeCloseTo(power, 4);
  expect(oddsOf(deviations, count - 1, 0.01)).toBeLessThan(0.8);
});

/**
 * Scatter from history and repeats, history set aside by repeats above the 75 % point of F: two million draws of the rule as
 * ARCHITECTURE states it, by NumPy 2.4.6 and SciPy 1.17.1 with no code of the program; standard error 0.00035.
 */
test.each([
  [2.5, 2, 20, 0.53189],
  [2.5, 2, Number.POSITIVE_INFINITY, 0.53668],
  [2.5, 3, 20, 0.71763],
  [2, 4, 6, 0.71048],
  [1, 16, Number.POSITIVE_INFINITY, 0.77472],
  [1, 16, 20, 0.78484],
  [0.5, 63, 20, 0.79571],
])(
  '%f standard deviations, %i of each, history of %f degrees: the rule costs what it costs',
  (deviations, count, known, power) => {
    expect(Math.abs(oddsOf(deviations, count, known) - power)).toBeLessThan(0.004);
  },
);
