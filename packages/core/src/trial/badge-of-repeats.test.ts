import { expect, test } from 'vitest';
import { RANGE_OVER_SIGMA } from './badge-of-repeats.ts';

/** Error function to 1.5e-7: Abramowitz and Stegun 7.1.26, from memory. */
function erf(x: number): number {
  const t = 1 / (1 + 0.3275911 * Math.abs(x));
  const sum = ((((1.061405429 * t - 1.453152027) * t + 1.421413741) * t - 0.284496736) * t + 0.254829592) * t;
  return Math.sign(x) * (1 - sum * Math.exp(-x * x));
}
const below = (x: number) => (1 + erf(x / Math.SQRT2)) / 2;
const density = (x: number) => Math.exp((-x * x) / 2) / Math.sqrt(2 * Math.PI);

/** Chance that n normal values lie within w: n times the integral of density(x) times [below(x + w) - below(x)]^(n - 1). */
function chanceWithin(n: number, w: number): number {
  const step = 0.002;
  let sum = 0;
  for (let x = -9; x <= 9; x += step) sum += density(x) * (below(x + w) - below(x)) ** (n - 1);
  return n * sum * step;
}

test('each is the 95 % point of the range of that many normal values', () => {
  RANGE_OVER_SIGMA.forEach((point, place) => {
    // Two decimals of the point are 0.1 % of chance.
    expect(chanceWithin(place + 2, point), `${place + 2} pulls`).toBeCloseTo(0.95, 2);
  });
  expect(RANGE_OVER_SIGMA[0]).toBeCloseTo(1.96 * Math.SQRT2, 2);
});
