import { expect, test } from 'vitest';
import { fromInside, toInside } from '../quantity/index.ts';
import { blowThroughCautions, blowThroughPressure } from './carburettor.ts';
import { usualConsumption } from './consumption.ts';
import { evaporationCooling } from './evaporation.ts';
import { fuelNamed } from './fuel-named.ts';
import { GASOLINE } from './gasoline.ts';
import { usualLambda } from './lambda.ts';
import type { Fuel, Induction } from './model.ts';
import { pumpCapacity } from './pumps.ts';

const named = (text: string): Fuel => {
  const read = fuelNamed(text);
  if (!read.ok) throw new Error(text);
  return read.value;
};
const inPound = (value: number) => fromInside(value, 'lb/(hp·h)', 'specificConsumption');

// The trade's table of consumption and mixture at full load (common practice, no source).
test.each<[string, Induction, number, number, number]>([
  ['gasoline', 'naturally aspirated', 0.4, 0.48, 0.55],
  ['gasoline', 'centrifugal', 0.55, 0.6, 0.65],
  ['gasoline', 'positive displacement', 0.6, 0.65, 0.7],
  ['gasoline', 'turbocharged', 0.52, 0.57, 0.62],
  ['e85', 'naturally aspirated', 0.63, 0.68, 0.72],
  ['e85', 'centrifugal', 0.75, 0.85, 0.95],
  ['methanol', 'naturally aspirated', 0.95, 1.03, 1.1],
  ['methanol', 'turbocharged', 1.1, 1.3, 1.5],
])('%s, %s: %f, %f, %f lb/(hp·h)', (fuel, induction, ...expected) => {
  const { low, usual, high } = usualConsumption(named(fuel), induction);
  expect([low, usual, high].map(inPound)).toEqual(expected.map((one) => expect.closeTo(one, 9)));
});

test('between the three: more alcohol takes more fuel, a richer lambda never leaves the ends', () => {
  const shares = [0, 10, 30, 50, 70, 85, 100].map((percent) => named(`E${percent}`));
  for (const induction of ['naturally aspirated', 'centrifugal'] as const) {
    const usual = shares.map((fuel) => usualConsumption(fuel, induction).usual);
    expect(usual).toEqual([...usual].sort((one, other) => one - other));
    for (const fuel of shares) {
      const { low, usual: middle, high } = usualLambda(fuel, induction);
      expect(low).toBeLessThan(middle);
      expect(middle).toBeLessThan(high);
    }
  }
  expect(usualLambda(GASOLINE, 'centrifugal').usual).toBeCloseTo(0.79, 12);
});

test('all of the fuel evaporated cools by the trade’s 17 to 33 K with gasoline, and none by nothing', () => {
  const cooled = evaporationCooling(GASOLINE, 0.8, 1);
  expect(cooled).toBeGreaterThan(17);
  expect(cooled).toBeLessThan(33);
  expect(evaporationCooling(GASOLINE, 0.8, 0)).toBe(0);
  // By hand: 1 / (0.8 × 14.599) of 350 kJ/kg over 1005 + that × 1700 J/(kg·K).
  const mixed = 1 / (0.8 * 14.5987);
  expect(cooled).toBeCloseTo((mixed * 350e3) / (1005 + mixed * 1700), 2);
});

test('a pump goes straight between its points, falls on beyond the last, and never pumps backwards', () => {
  const pump = {
    name: 'pump',
    ratedVoltage: 13.5,
    voltage: 13.5,
    points: [
      { pressure: 3e5, flow: 8e-5 },
      { pressure: 5e5, flow: 6e-5 },
    ],
  };
  expect([2e5, 3e5, 4e5, 6e5, 20e5].map((pressure) => pumpCapacity(pump, pressure))).toEqual(
    [8e-5, 8e-5, 7e-5, 5e-5, 0].map((flow) => expect.closeTo(flow, 12)),
  );
  const [single] = pump.points;
  // 8 % a bar above its only point.
  expect(pumpCapacity({ ...pump, points: [single!] }, 5e5)).toBeCloseTo(8e-5 * 0.84, 12);
  expect(() => pumpCapacity({ ...pump, points: [] }, 3e5)).toThrow('without a point');
});

test('a blown-through carburettor: base and boost, and floats above 8 psi', () => {
  const psi = (value: number) => toInside(value, 'psi', 'gaugePressure');
  expect(fromInside(blowThroughPressure(psi(6.5), psi(10)), 'psi', 'gaugePressure')).toBeCloseTo(16.5, 9);
  const codes = (boost: number) => blowThroughCautions(psi(6.5), psi(boost)).map(({ code }) => code);
  expect(codes(0)).toEqual([]);
  expect(codes(7)).toEqual(['blow-through-pressure']);
  expect(codes(10)).toEqual(['blow-through-pressure', 'blow-through-floats']);
});
