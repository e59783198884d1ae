import { expect, test } from 'vitest';
import { matchBands, solveMatch } from '../airpath/index.ts';
import { plainInput } from '../airpath/match/match-input.testing.ts';
import { highestOf, predictedCurve } from './predicted-curve.ts';

test('power and boost with their bands, the air that was reckoned with, and the highest with the band at its speed', () => {
  const input = plainInput();
  const one = { input, spread: [{ key: 'work', parts: ['work' as const], factor: [[0.03]] }] };
  const curve = solveMatch(input);
  const foretold = predictedCurve(curve, matchBands([one], { draws: 400, seed: 3 }).cases[0]!, input.air);
  expect(foretold.air).toEqual({ pressure: 99_000, temperature: 298.15 });
  expect(foretold.power.value).toEqual(Array.from(curve.figures.brakePower));
  foretold.power.value.forEach((value, node) => {
    expect(foretold.power.low[node]!).toBeLessThan(value);
    expect(foretold.power.high[node]!).toBeGreaterThan(value);
  });
  const highest = highestOf(foretold, foretold.power)!;
  expect(highest.value).toBe(Math.max(...foretold.power.value));
  const node = foretold.engineSpeedRpm.indexOf(highest.atRpm);
  expect([highest.low, highest.high]).toEqual([foretold.power.low[node], foretold.power.high[node]]);
  // Work alone open by 3 %: indicated power moves by 1.96 × 3 % either way.
  const indicated = curve.figures.indicatedPower[node]!;
  const width = (highest.high - highest.low) / (2 * 1.96 * 0.03 * indicated);
  expect(width).toBeGreaterThan(0.85);
  expect(width).toBeLessThan(1.15);
});

test('speeds without a solution are left out', () => {
  const input = plainInput();
  const curve = solveMatch(input);
  const bands = matchBands([{ input, spread: [] }], { draws: 10, seed: 1 }).cases[0]!;
  curve.figures.brakePower[0] = Number.NaN;
  const foretold = predictedCurve(curve, bands, input.air);
  expect(foretold.engineSpeedRpm).toEqual(curve.engineSpeedRpm.slice(1));
});
