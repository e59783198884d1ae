import { solveMatch } from '@pullbook/core/airpath';
import { blendOf } from '@pullbook/core/fuel';
import { expect, test } from 'vitest';
import { inventedBundle } from './test-bundle.ts';
import { whatIfCase } from './what-if-case.ts';

const bundle = inventedBundle();
const original = bundle.combinations[0]!;

test('nothing tried, or an unknown combination, is no case', () => {
  expect(whatIfCase(bundle, { key: 'A' })).toBeNull();
  expect(whatIfCase(bundle, { key: 'Z', stepUp: 3 })).toBeNull();
});

test('pulleys change the ratio by their share, and the original stays as it was', () => {
  const before = structuredClone(original.input.drive);
  const tried = whatIfCase(bundle, { key: 'A', crankPulleyDiameter: 0.18, blowerPulleyDiameter: 0.08 })!;
  expect(tried.input.drive.pulleyRatio).toBeCloseTo(0.18 / 0.08, 12);
  expect(original.input.drive).toEqual(before);
});

test('a ratio that was told by teeth moves by the share of the pulley', () => {
  const told = { ...original.input, drive: { ...original.input.drive, pulleyRatio: 2.2 } };
  const one = { ...bundle, combinations: [{ ...original, input: told }] };
  expect(whatIfCase(one, { key: 'A', blowerPulleyDiameter: 0.042 })!.input.drive.pulleyRatio).toBeCloseTo(
    4.4,
    12,
  );
});

test('pulleys that were not known: both must be told, one alone changes nothing', () => {
  const drive = { ...original.input.drive, crankPulleyDiameter: null, blowerPulleyDiameter: null };
  const one = { ...bundle, combinations: [{ ...original, input: { ...original.input, drive } }] };
  expect(whatIfCase(one, { key: 'A', blowerPulleyDiameter: 0.08 })!.input.drive.pulleyRatio).toBe(
    drive.pulleyRatio,
  );
  const both = whatIfCase(one, { key: 'A', crankPulleyDiameter: 0.16, blowerPulleyDiameter: 0.08 })!;
  expect(both.input.drive.pulleyRatio).toBeCloseTo(2, 12);
});

test('a case is a new line of its own: key, look, never measured, the same spread', () => {
  const tried = whatIfCase(bundle, { key: 'A', stepUp: 3.7 })!;
  expect(tried).toMatchObject({ key: 'A′', combination: 2, measured: null, fit: null });
  expect(tried.spread.slice(0, original.spread.length)).toEqual(original.spread);
});

test('no cooler heats the charge; a cooler where there was none is said to cost no pressure', () => {
  const hot = whatIfCase(bundle, { key: 'A', cooler: 'none' })!;
  const last = original.input.baseline.engineSpeedRpm.length - 1;
  const temperatureOf = (input: typeof hot.input) => solveMatch(input).figures.manifoldTemperature[last]!;
  expect(temperatureOf(hot.input)).toBeGreaterThan(temperatureOf(original.input) + 30);
  const bare = { ...bundle, combinations: [{ ...original, input: hot.input }] };
  const cooled = whatIfCase(bare, { key: 'A', cooler: { effectiveness: 0.7, coolantTemperature: null } })!;
  expect(cooled.assumptions.map(({ code }) => code)).toContain('tried-cooler-without-loss');
  expect(cooled.input.cooler?.effectiveness).toBe(0.7);
});

test('more air between two speeds, on top of what stands', () => {
  const tried = whatIfCase(bundle, { key: 'B', breathing: { fromRpm: 5000, toRpm: 6000, share: 0.05 } })!;
  const nodes = original.input.baseline.engineSpeedRpm;
  const at = (rpm: number) => tried.input.swallowing.breathing![nodes.indexOf(rpm)]!;
  expect(at(4000)).toBeCloseTo(1, 12);
  expect(at(6000)).toBeCloseTo(1.08 * 1.05, 12);
  expect(at(6050)).toBeCloseTo(1.08, 12);
});

test('at another ratio head and work are opened; at the same nothing is', () => {
  const added = (whatIf: object) =>
    whatIfCase(bundle, { key: 'A', ...whatIf })!.spread.slice(original.spread.length);
  expect(original.fit).not.toBeNull();
  expect(added({ stepUp: 1.05 * original.input.drive.stepUp }).map(({ parts }) => parts)).toEqual([
    ['head', 'work'],
  ]);
  expect(added({ evaporationCooling: 5 })).toEqual([]);
});

test('more work is on top of what a fit found, and another fuel multiplies the work and opens it', () => {
  const fitted = {
    ...original,
    input: { ...original.input, work: { ...original.input.work, factor: 0.93 } },
  };
  const on = { ...bundle, combinations: [fitted] };
  expect(whatIfCase(on, { key: 'A', workFactor: 1.02 })!.input.work.factor).toBeCloseTo(0.9486, 12);
  const methanol = blendOf([{ substance: 'methanol', volumeShare: 1 }]);
  const tried = whatIfCase(on, { key: 'A', fuel: methanol })!;
  expect(tried.input.work.factor).toBe(0.93);
  // By its energy alone a kilogram of air does 3.6 % more on methanol than on gasoline.
  expect(Math.min(...tried.input.work.fuelFactor!)).toBeGreaterThan(1.03);
  expect(tried.spread.at(-1)).toMatchObject({ parts: ['work'], staysBesideFit: true });
  expect(tried.assumptions.map(({ code }) => code)).toContain('fuel-allows-spark');
  expect(tried.supply.fuel.name).toBe('methanol');
});
