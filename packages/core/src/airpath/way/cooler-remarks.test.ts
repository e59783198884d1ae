import { expect, test } from 'vitest';
import { plainInput } from '../match/match-input.testing.ts';
import { solveMatch } from '../match/solve-match.ts';
import type { Cooler } from '../model.ts';
import { coolerRemarks } from './cooler-remarks.ts';

const cooled = (changes: Partial<Cooler>) => {
  const loss = { pressureDifference: 0, atFlow: 1, atDensity: 1 };
  const input = plainInput({
    cooler: { by: 'water', effectiveness: 0.8, coolantTemperature: 285, loss, ...changes },
  });
  const curve = solveMatch(input);
  return { curve, remarks: coolerRemarks(input, curve) };
};

test('a coolant warmer than the hot air is named with the speeds, and the charge is heated', () => {
  const { curve, remarks } = cooled({ coolantTemperature: 330 });
  expect(remarks.map(({ code }) => code)).toEqual(['coolant-warmer-than-air']);
  expect(remarks[0]!.message).toContain('from 3,000 rpm to 4,000 rpm');
  expect(curve.figures.coolerHeat[0]).toBeLessThan(0);
  expect(curve.figures.coolerHeat.at(-1)).toBeGreaterThan(0);
});

test('ice: the heat of the curve over a sweep of 300 r/min each second, by hand', () => {
  const { curve, remarks } = cooled({ by: 'ice water', coolantTemperature: 275.15 });
  const { coolerHeat } = curve.figures;
  const inner = coolerHeat.slice(1, -1).reduce((sum, heat) => sum + heat, 0);
  const heat = (inner + (coolerHeat[0]! + coolerHeat.at(-1)!) / 2) * (250 / 300);
  expect(remarks.map(({ code }) => code)).toEqual(['ice-melted']);
  const ice = remarks[0]!.parts!.find((part) => typeof part !== 'string' && part.kind === 'mass');
  expect(ice).toMatchObject({ kind: 'mass' });
  expect((ice as { value: number }).value).toBeCloseTo(heat / (334_000 + 2 * 4186), 9);
});

test('a sound cooler, or none, says nothing', () => {
  expect(cooled({}).remarks).toEqual([]);
  const bare = plainInput();
  expect(coolerRemarks(bare, solveMatch(bare))).toEqual([]);
});
