import { expect, test } from 'vitest';
import { MATCH_FIGURES, type MatchFigure, type MatchInput, solveMatch } from '../airpath/index.ts';
import { dryAir, plainInput } from '../airpath/match/match-input.testing.ts';
import { type Matched, POWER_PARTS, type SplitOfPower, splitOfPower } from './split-of-power.ts';

const matched = (changes: Partial<MatchInput> = {}): Matched => {
  const input = plainInput(changes);
  return { input, curve: solveMatch(input) };
};
const sumOf = ({ parts }: SplitOfPower) => POWER_PARTS.reduce((sum, part) => sum + parts[part], 0);
const plain = plainInput();
const base = matched();
const everythingElse = matched({
  air: dryAir(93_000, 308),
  drive: { ...plain.drive, pulleyRatio: 2.1 },
  cooler: {
    by: 'water',
    effectiveness: 0.7,
    loss: { pressureDifference: 2000, atFlow: 0.4, atDensity: 1.6 },
    coolantTemperature: 300,
  },
  swallowing: { ...plain.swallowing, breathing: plain.baseline.engineSpeedRpm.map(() => 1.08) },
  work: { factor: 0.97, gasExchange: true, frictionRise: 0.02 },
});

test.each([3000, 4321, 5000, 6500])('the parts sum to the difference of brake power at %d r/min', (speed) => {
  const split = splitOfPower(base, everythingElse, speed)!;
  expect(Math.abs(sumOf(split) - (split.to - split.from))).toBeLessThan(1e-9 * split.to);
  const back = splitOfPower(everythingElse, base, speed)!;
  for (const part of POWER_PARTS) expect(Math.abs(back.parts[part] + split.parts[part])).toBeLessThan(1e-6);
});

test('nothing changed: every part is nil', () => {
  const split = splitOfPower(base, matched(), 5000)!;
  for (const part of POWER_PARTS) expect(Math.abs(split.parts[part])).toBeLessThan(1e-6);
});

test('three per cent off the work of the air is work alone: 3 % of indicated power', () => {
  const split = splitOfPower(base, matched({ work: { ...plain.work, factor: 0.97 } }), 5000)!;
  const node = base.curve.engineSpeedRpm.indexOf(5000);
  const indicated = base.curve.figures.indicatedPower[node]!;
  expect(split.parts.work / (-0.03 * indicated)).toBeCloseTo(1, 9);
  for (const part of POWER_PARTS.filter((one) => one !== 'work'))
    expect(Math.abs(split.parts[part])).toBeLessThan(1e-6 * indicated);
});

// By hand: indicated 300 to 370.44 kW is pressure times 1.2, breathing times 1.05, work times 0.98; the logarithmic mean is
// 70.44 / ln(1.2348) = 333.98 kW, times ln 1.2, ln 1.05, ln 0.98. Friction 40 to 42, drive 10 to 15 kW.
test('a worked example', () => {
  const side = (figures: Partial<Record<MatchFigure, number>>): Matched => ({
    input: plain,
    curve: {
      engineSpeedRpm: [6000],
      figures: Object.fromEntries(
        MATCH_FIGURES.map((figure) => [figure, Float64Array.of(figures[figure] ?? 0)]),
      ) as Matched['curve']['figures'],
      state: ['on the map'],
    },
  });
  const before = {
    airFlow: 0.3,
    indicatedPower: 300e3,
    frictionPower: 40e3,
    drivePower: 10e3,
    brakePower: 250e3,
    manifoldPressure: 120e3,
    manifoldTemperature: 320,
  };
  const after = {
    airFlow: 0.378,
    indicatedPower: 370.44e3,
    frictionPower: 42e3,
    drivePower: 15e3,
    brakePower: 313.44e3,
    manifoldPressure: 144e3,
    manifoldTemperature: 320,
  };
  const { parts } = splitOfPower(side(before), side(after), 6000)!;
  expect(parts.manifoldPressure / 1e3).toBeCloseTo(60.892, 3);
  expect(parts.breathing / 1e3).toBeCloseTo(16.295, 3);
  expect(parts.work / 1e3).toBeCloseTo(-6.747, 3);
  expect([parts.friction, parts.drive, parts.weather, parts.manifoldTemperature].map(Math.abs)).toEqual([
    2000, 5000, 0, 0,
  ]);
});

test('each change shows in its own part and with its sign', () => {
  const of = (changes: Partial<MatchInput>) => splitOfPower(base, matched(changes), 6500)!.parts;
  const faster = of({ drive: { ...plain.drive, pulleyRatio: 2.1 } });
  expect(faster.manifoldPressure).toBeGreaterThan(0);
  expect(faster.manifoldTemperature).toBeLessThan(0);
  expect(faster.drive).toBeLessThan(0);
  expect(Math.abs(faster.weather)).toBe(0);
  const breathing = of({
    swallowing: { ...plain.swallowing, breathing: plain.baseline.engineSpeedRpm.map(() => 1.08) },
  });
  expect(breathing.breathing).toBeGreaterThan(0.9 * Math.max(...POWER_PARTS.map((part) => breathing[part])));
  const cooled = of({
    cooler: {
      by: 'water',
      effectiveness: 0.7,
      loss: { pressureDifference: 0, atFlow: 0.4, atDensity: 1.6 },
      coolantTemperature: 298,
    },
  });
  expect(cooled.manifoldTemperature).toBeGreaterThan(0);
  const high = of({ air: dryAir(85_000, 298.15) });
  expect(high.weather).toBeLessThan(0);
});

test('where one side has no match there is no split', () => {
  expect(splitOfPower(base, base, 7000)).toBeNull();
  const figures = { ...base.curve.figures, airFlow: base.curve.figures.airFlow.map(() => Number.NaN) };
  expect(splitOfPower(base, { ...base, curve: { ...base.curve, figures } }, 5000)).toBeNull();
});
