import { expect, test } from 'vitest';
import { withFit } from '../../fit/index.ts';
import { blendOf, type Fuel } from '../../fuel/index.ts';
import type { MatchCase, MatchInput } from '../model.ts';
import { troubleOfInput } from './input-trouble.ts';
import { matchBands } from './match-bands.ts';
import { plainInput } from './match-input.testing.ts';
import { solveMatch } from './solve-match.ts';
import { type OtherFuel, withOtherFuel } from './with-other-fuel.ts';

const GASOLINE: Fuel = {
  ...blendOf([{ substance: 'gasoline', volumeShare: 1 }]),
  researchOctane: 98,
  motorOctane: 88,
};
const METHANOL = blendOf([{ substance: 'methanol', volumeShare: 1 }]);
const TO_METHANOL: OtherFuel = { before: GASOLINE, after: METHANOL, lambda: 0.75, mixes: 'port' };
const caseOf = (changes: Partial<MatchInput> = {}): MatchCase => ({
  input: plainInput(changes),
  spread: [{ key: 'engine', parts: ['work'], factor: [[0.01]] }],
});

test('the same fuel: the very match', () => {
  const match = caseOf();
  const other = withOtherFuel(match, { ...TO_METHANOL, after: { ...GASOLINE, name: 'another drum' } });
  expect(other.match).toBe(match);
  expect(other.effect.work).toBe(1);
});

test('a factor of 1 at every node changes no figure, to the last bit', () => {
  const input = plainInput();
  const plain = solveMatch(input).figures;
  const ones = input.baseline.engineSpeedRpm.map(() => 1);
  expect(solveMatch({ ...input, work: { ...input.work, fuelFactor: ones } }).figures).toEqual(plain);
});

test('into the port: work by the factor, boost and air as they were, and a second fuel goes on from the first', () => {
  const match = caseOf();
  const before = solveMatch(match.input).figures;
  const { match: made, effect } = withOtherFuel(match, TO_METHANOL);
  const after = solveMatch(made.input).figures;
  expect(after.boost).toEqual(before.boost);
  expect(after.airFlow).toEqual(before.airFlow);
  made.input.work.fuelFactor!.forEach((factor, node) => {
    expect(after.indicatedPower[node]! / before.indicatedPower[node]!).toBeCloseTo(factor, 12);
    expect(factor).toBeGreaterThan(1.03);
  });
  const top = before.brakePower.indexOf(Math.max(...before.brakePower));
  expect(made.input.work.fuelFactor![top]).toBeCloseTo(effect.work, 9);
  const back = withOtherFuel(made, { ...TO_METHANOL, before: METHANOL, after: GASOLINE }).match;
  // Between the speeds at which it is worked out, there and back are each straight: a quarter of their squared difference, 3 % at most.
  for (const factor of back.input.work.fuelFactor!) expect(Math.abs(factor - 1)).toBeLessThan(0.03 ** 2 / 4);
});

test('what it leaves open is in the band: 2 % of the work at least', () => {
  const { match, effect } = withOtherFuel({ ...caseOf(), spread: [] }, TO_METHANOL);
  expect(match.spread).toEqual([
    {
      key: 'methanol in place of gasoline',
      parts: ['work'],
      factor: [[effect.workSpread]],
      staysBesideFit: true,
    },
  ]);
  const { indicatedPower } = matchBands([match], { draws: 400, seed: 3 }).cases[0]!;
  const solved = solveMatch(match.input).figures.indicatedPower;
  const half = (indicatedPower.high[7]! - indicatedPower.low[7]!) / 2 / solved[7]!;
  expect(half).toBeGreaterThan(1.7 * effect.workSpread);
  expect(half).toBeLessThan(2.3 * effect.workSpread);
  expect(withOtherFuel({ ...caseOf(), spread: [] }, { ...TO_METHANOL, isFitted: true }).match.spread).toEqual(
    [],
  );
});

test('through a carburettor it cools the charge, and past the compressor the baseline is still the baseline but for its fuel', () => {
  const wet = { heatFactor: 1, evaporationCooling: 20, fuelVapour: 0.01 };
  const match = caseOf({ charge: wet });
  const { match: made, effect } = withOtherFuel(match, { ...TO_METHANOL, mixes: 'carburettor' });
  expect(effect.evaporationCooling).toBeCloseTo(70, 9);
  expect(made.input.charge.evaporationCooling).toBeCloseTo(90, 9);
  // The baseline was pulled on gasoline, whatever is burnt now.
  expect(made.input.baseline).toMatchObject({ evaporationCooling: 20, fuelVapour: 0.01 });
  const [before, after] = [match, made].map(({ input }) => solveMatch(input).figures);
  expect(before!.manifoldTemperature[7]! - after!.manifoldTemperature[7]!).toBeGreaterThan(60);
  expect(after!.airFlow[7]!).toBeGreaterThan(before!.airFlow[7]!);
  // Half the way there in two steps is the whole way.
  const half = blendOf([
    { substance: 'methanol', volumeShare: 0.5 },
    { substance: 'gasoline', volumeShare: 0.5 },
  ]);
  const first = withOtherFuel(match, { ...TO_METHANOL, after: half, mixes: 'carburettor' }).match;
  const second = withOtherFuel(first, { ...TO_METHANOL, before: half, mixes: 'carburettor' }).match;
  expect(second.input.charge.evaporationCooling).toBeCloseTo(90, 9);
  expect(second.input.baseline.evaporationCooling).toBe(20);
});

test('a fit leaves factor and spread of a fuel alone', () => {
  const { match } = withOtherFuel(caseOf(), TO_METHANOL);
  const axis = { lowRpm: 3000, highRpm: 6500, overallRatio: 7 };
  const ids = ['headScale', 'flowScale', 'swallowingScale', 'chargeHeat', 'workFactor', 'slip'] as const;
  const bends = ['head', 'swallowing', 'work'].flatMap((one) =>
    ['tilt', 'bow'].map((bend) => `${one} ${bend}`),
  );
  const by = Object.fromEntries([
    ...ids.map((id) => [id, id === 'slip' ? 0 : 0.95]),
    ...bends.map((id) => [id, 0]),
  ]);
  const lines = [...ids, ...bends].map(() => [0.01]);
  const moves = { by, lines } as never;
  const fit = {
    ground: {
      baseline: 'another',
      baselinePullIds: [],
      map: 'map rated',
      coolers: ['no cooler'],
      overallRatios: [7],
    },
    axis,
    own: moves,
    carried: moves,
    lostWork: 0,
    key: 'fit',
    parameters: [],
    pullIds: [],
    restsOn: [],
    residuals: [],
    readings: [],
    remarks: [],
  };
  const fitted = withFit(match, fit);
  expect(fitted.input.work.fuelFactor).toEqual(match.input.work.fuelFactor);
  expect(fitted.input.work.factor).toBeLessThan(1);
  expect(fitted.spread).toContainEqual(match.spread.at(-1));
  expect(fitted.spread.map(({ key }) => key)).not.toContain('engine');
});

test.each([
  ['one for each speed', [1, 1], 'baseline-uneven'],
  [
    'above zero',
    plainInput().baseline.engineSpeedRpm.map((_, node) => (node === 3 ? 0 : 1)),
    'fuel-factor-not-above-zero',
  ],
])('a factor that is not %s is refused', (_, fuelFactor, code) => {
  const input = plainInput();
  const trouble = troubleOfInput({ ...input, work: { ...input.work, fuelFactor } });
  expect(trouble.map((one) => one.code)).toContain(code);
});
