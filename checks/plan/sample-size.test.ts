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
 * n = 2 ((z.975 + z.80) s / d)²: 15.698, 62.79 and 3.92 a group, so 16, 63 and 4 are the first that reach 80 %. Textbook formula,
 * z from tables.
 */
test.each([
  [1, 16],
  [0.5, 63],
  [2, 4],
])(
  'scatter known: a difference of %f standard deviations takes %i pulls of each for 80 %%',
  (deviations, count) => {
    expect(oddsOf(deviations, count, Number.POSITIVE_INFINITY)).toBeGreaterThanOrEqual(0.8);
    expect(oddsOf(deviations, count - 1, Number.POSITIVE_INFINITY)).toBeLessThan(0.8);
  },
);

/** Cohen, Statistical Power Analysis for the Behavioral Sciences, table 2.4.1, two-sided 5 %, power 80 %; four digits from memory. */
test.each([
  [0.5, 64, 0.80146],
  [0.8, 26, 0.80749],
  [1, 17, 0.80704],
])('scatter from the repeats alone: %f standard deviations, %i of each', (deviations, count, power) => {
  expect(oddsOf(deviations, count, 0)).toBeCloseTo(power, 4);
  expect(oddsOf(deviations, count - 1, 0)).toBeLessThan(0.8);
});

/** The smallest difference is the gain whose odds are the odds asked for: both ways round, by the formula above. */
test('smallest difference with known scatter is (z.975 + z.80) s sqrt(2 / n)', () => {
  for (const count of [2, 5, 12]) {
    const pulls = each(count);
    const smallest = judgeDesign(pulls, [pulls.length], {
      baseline: 'A',
      history: onlyPulls(Number.POSITIVE_INFINITY),
      gainRatio: 0.01,
      odds: 0.8,
    })!.smallest();
    // The other tail, a gain taken for a loss, adds less than 1e-5 to the odds: the formula leaves it out.
    expect(Math.log1p(smallest)).toBeCloseTo((1.959964 + 0.841621) * 0.01 * Math.sqrt(2 / count), 5);
  }
});
