import { expect, test } from 'vitest';
import { logGamma } from './log-gamma.ts';
import { scaleRule } from './scale-rule.ts';

// Moments of chi² and chi in closed form: E S² = 1, E S⁴ = 1 + 2 / df, E S = √(2 / df) Γ((df + 1) / 2) / Γ(df / 2).
test.each([0.5, 1, 3, 8.4, 60, 3000])('moments of the standard deviation for %f degrees of freedom', (df) => {
  const { scales, weights } = scaleRule(df);
  const moment = (power: number) => scales.reduce((sum, s, i) => sum + weights[i]! * s ** power, 0);
  expect(moment(0)).toBeCloseTo(1, 13);
  expect(moment(2)).toBeCloseTo(1, 11);
  expect(moment(4) / (1 + 2 / df)).toBeCloseTo(1, 11);
  const first = Math.sqrt(2 / df) * Math.exp(logGamma((df + 1) / 2) - logGamma(df / 2));
  expect(moment(1)).toBeCloseTo(first, 11);
});

test('known scatter is one value', () => {
  expect(scaleRule(Number.POSITIVE_INFINITY)).toEqual({
    scales: Float64Array.of(1),
    weights: Float64Array.of(1),
  });
});
