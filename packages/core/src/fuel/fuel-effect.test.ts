import { expect, test } from 'vitest';
import { beforeManifold, vapourShare } from './before-manifold.ts';
import { blendOf } from './blend.ts';
import { fuelEffect, isSameFuel } from './fuel-effect.ts';
import type { ChargeAtLoad, Fuel, FuelSupply } from './model.ts';

const GASOLINE: Fuel = {
  ...blendOf([{ substance: 'gasoline', volumeShare: 1 }]),
  researchOctane: 98,
  motorOctane: 88,
};
const ethanolOf = (share: number): Fuel =>
  blendOf([
    { substance: 'ethanol', volumeShare: share },
    { substance: 'gasoline', volumeShare: 1 - share },
  ]);
const METHANOL = blendOf([{ substance: 'methanol', volumeShare: 1 }]);
const LIGHT: ChargeAtLoad = {
  engineSpeedRpm: 6000,
  manifoldPressure: 98e3,
  manifoldTemperature: 305,
  compressionRatio: 9,
  exhaustPressure: 103e3,
  lambda: 0.85,
};
const HARD: ChargeAtLoad = {
  ...LIGHT,
  manifoldPressure: 168e3,
  manifoldTemperature: 385,
  compressionRatio: 10,
};

test('the same fuel by another name does nothing, exactly', () => {
  const effect = fuelEffect(GASOLINE, { ...GASOLINE, name: 'from the other drum' }, HARD, 'carburettor');
  expect(effect).toEqual({ work: 1, workSpread: 0, evaporationCooling: 0, fuelVapour: 0, because: [] });
  expect(isSameFuel(GASOLINE, { ...GASOLINE, researchOctane: 95 })).toBe(false);
});

test('where knock binds neither, what is left is the energy of the air and a little more of it', () => {
  // Worked from handbook heating values and ratios: 19.93 / 6.47 against 43.4 / 14.6, and 26.81 / 9.00.
  const methanol = fuelEffect(GASOLINE, METHANOL, LIGHT, 'port').work;
  expect(methanol).toBeGreaterThan(1.036);
  expect(methanol).toBeLessThan(1.036 * 1.03);
  const ethanol = fuelEffect(GASOLINE, ethanolOf(1), LIGHT, 'port').work;
  expect(ethanol).toBeGreaterThan(1.002);
  expect(ethanol).toBeLessThan(1.002 * 1.03);
});

test('the harder the charge knocks, the more a fuel that stands it gives back; never said better than a rule of thumb', () => {
  const [light, hard] = [LIGHT, HARD].map((charge) => fuelEffect(GASOLINE, ethanolOf(0.85), charge, 'port'));
  expect(hard!.work).toBeGreaterThan(light!.work + 0.005);
  expect(light!.workSpread).toBeGreaterThanOrEqual(0.02);
  expect(hard!.workSpread).toBeGreaterThan(light!.workSpread);
  expect(hard!.because.map(({ code }) => code)).toEqual([
    'fuel-energy',
    'fuel-draws-air',
    'fuel-allows-spark',
    'fuel-rule-of-thumb',
  ]);
});

test('back again is the way back', () => {
  const there = fuelEffect(GASOLINE, METHANOL, HARD, 'direct').work;
  expect(there * fuelEffect(METHANOL, GASOLINE, HARD, 'direct').work).toBeCloseTo(1, 9);
});

test.each<[FuelSupply['mixes'], boolean]>([
  ['port', false],
  ['direct', false],
  ['carburettor', true],
])('fuel by %s: whether it cools the manifold', (mixes, cools) => {
  const { evaporationCooling, fuelVapour } = fuelEffect(GASOLINE, METHANOL, HARD, mixes);
  expect(evaporationCooling > 0).toBe(cools);
  expect(fuelVapour > 0).toBe(cools);
});

test('before the manifold, in the ranges of blow-through carburettors', () => {
  // 17 to 33 K of gasoline, 33 to 67 K of E85, 67 to 111 K of methanol (common practice, no source).
  expect(beforeManifold(GASOLINE).cooling).toBeCloseTo(20, 9);
  const ofE85 = beforeManifold(ethanolOf(0.85)).cooling;
  expect(ofE85).toBeGreaterThan(33);
  expect(ofE85).toBeLessThan(67);
  expect(beforeManifold(METHANOL).cooling).toBeCloseTo(90, 9);
  // Stoichiometric methanol: one mole in 7.16 of air (1.5 of oxygen), all of it evaporated.
  expect(vapourShare(METHANOL, 1, 1)).toBeCloseTo(1 / (1 + 1.5 * 4.773), 3);
});
