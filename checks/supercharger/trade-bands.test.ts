import { fitMap, type MatchFigure, type MatchInput, solveMatch } from '@pullbook/core/airpath';
import { describe, expect, test } from 'vitest';
import { dryAir, textbookInput } from './engine-at-hand.ts';

// Sizes the trade expects of any supercharged engine. Common practice, no source; some are derived in the trade's own notes.
// Asked of the program's own generic stage, so that a wrong unit or a wrong order of size anywhere in the path shows.

const HORSEPOWER = 745.69987;
const PSI = 6894.757;
const AIR = dryAir(101_325, 298.15);

const MAP = (() => {
  const map = fitMap({
    id: 'rated',
    name: 'invented wheel',
    form: 'rated',
    reference: { pressure: 101_325, temperature: 298.15 },
    geometry: { wheelExitDiameter: 0.152, wheelInletDiameter: 0.106, blades: 16, backsweep: 0.6 },
    points: [{ flow: 0.45, pressureRatio: 1.75, speedRpm: 42_000, efficiency: 0.74 }],
    leftEnd: 'not known',
    origin: 'assumed',
    notes: '',
    invented: true,
    createdAt: '2026-01-01T00:00:00Z',
  });
  if (!map.ok) throw new Error(map.remarks[0]?.message);
  return map.value;
})();

/** 400 hp of a 5.7 litre engine at 6000 r/min, 15 % friction, by 10.2 hp for each lb/min of air. */
const ENGINE = {
  air: AIR,
  displacement: 5.7e-3,
  engineSpeedRpm: 6000,
  airFlow: ((400 / 10.2) * 0.45359237) / 60,
  brakePower: 400 * HORSEPOWER,
  frictionPower: 60 * HORSEPOWER,
};

function input(changes: Partial<MatchInput> = {}, ratio = 7): MatchInput {
  const base = textbookInput(ENGINE, changes);
  return {
    ...base,
    compressor: {
      map: MAP,
      headScale: 1,
      efficiencyShift: 0,
      constantEfficiency: null,
      ...changes.compressor,
    },
    drive: {
      ...base.drive,
      kind: 'ribbed belt',
      stepUp: ratio,
      mechanicalEfficiency: 0.95,
      ...changes.drive,
    },
  };
}

const figure = (of: MatchInput, name: MatchFigure) => solveMatch(of).figures[name][0]!;

/** The drive ratio that gives a boost, by halving: the trade's tables ask for a boost and not for a pulley. */
function atBoost(psi: number, changes: Partial<MatchInput>): MatchInput {
  let [low, high] = [2, 12];
  for (let step = 0; step < 60; step++) {
    const middle = (low + high) / 2;
    if (figure(input(changes, middle), 'boost') < psi * PSI) low = middle;
    else high = middle;
  }
  return input(changes, low);
}

describe('ratio +1 %', () => {
  test.each([6, 6.5, 7, 7.5])('at a ratio of %d: boost about +2 %%, drive power about +3 %%', (ratio) => {
    const [before, after] = [input({}, ratio), input({}, ratio * 1.01)];
    const rise = (name: MatchFigure) => 100 * (figure(after, name) / figure(before, name) - 1);
    expect(rise('boost')).toBeGreaterThan(1.7);
    expect(rise('boost')).toBeLessThan(2.7);
    expect(rise('drivePower')).toBeGreaterThan(2.5);
    expect(rise('drivePower')).toBeLessThan(4);
  });
});

test('1 % of slip costs about 2.4 % of the boost at a pressure ratio near 1.7', () => {
  const grips = atBoost(10.3, {});
  const slips = { ...grips, drive: { ...grips.drive, slip: 0.01 } };
  const lost = 100 * (1 - figure(slips, 'boost') / figure(grips, 'boost'));
  expect(lost).toBeGreaterThan(1.9);
  expect(lost).toBeLessThan(2.8);
});

test('boost of a centrifugal supercharger goes with engine speed to the power of 1.7 to 2.2', () => {
  const speeds = [3000, 4000, 5000, 6000];
  const base = input({}, 6.5);
  const many = {
    ...base,
    baseline: {
      ...base.baseline,
      engineSpeedRpm: speeds,
      brakePower: speeds.map((speed) => (speed / 6000) * ENGINE.brakePower),
      frictionPower: speeds.map((speed) => (speed / 6000) ** 2 * ENGINE.frictionPower),
      airFlow: speeds.map((speed) => (speed / 6000) * ENGINE.airFlow),
      manifoldPressure: speeds.map(() => AIR.pressure),
      manifoldTemperature: speeds.map(() => AIR.temperature),
    },
  };
  const { boost } = solveMatch(many).figures;
  const exponent = Math.log(boost[3]! / boost[1]!) / Math.log(6000 / 4000);
  expect(exponent).toBeGreaterThan(1.7);
  expect(exponent).toBeLessThan(2.2);
});

describe('400 hp without, 70 % efficiency, spark held back', () => {
  const compressor = { map: MAP, headScale: 1, efficiencyShift: 0, constantEfficiency: 0.7 };
  const uncooled = { compressor, work: { factor: 0.96, gasExchange: false, frictionRise: 0 } };
  const gain = (of: MatchInput) => 100 * (figure(of, 'brakePower') / ENGINE.brakePower - 1);

  test.each([
    [5, 12],
    [8, 20],
    [10, 26],
    [12, 31],
    [15, 38],
  ])('%d psi uncooled by density alone: +%d %%', (psi, expected) => {
    expect(Math.abs(gain(atBoost(psi, uncooled)) - expected)).toBeLessThan(1.5);
  });

  test('10 psi uncooled with the charge-heat term: about +42 %, 4.2 % a psi', () => {
    const of = input(uncooled).swallowing;
    expect(
      Math.abs(gain(atBoost(10, { ...uncooled, swallowing: { ...of, heatExponent: 0.5 } })) - 42),
    ).toBeLessThan(3);
  });

  test.each([
    [5, 26],
    [10, 52],
    [15, 76],
  ])('%d psi, air to air cooler of 75 %%: +%d %%', (psi, expected) => {
    const cooled: Partial<MatchInput> = {
      compressor,
      work: { factor: 0.98, gasExchange: false, frictionRise: 0 },
      cooler: {
        by: 'air',
        effectiveness: 0.75,
        coolantTemperature: null,
        loss: { pressureDifference: 0, atFlow: 1, atDensity: 1 },
      },
    };
    expect(Math.abs(gain(atBoost(psi, cooled)) - expected)).toBeLessThan(2);
  });

  test.each([
    [6, 5],
    [10, 8],
    [15, 11],
  ])('%d psi takes about %d %% of the net power to drive', (psi, expected) => {
    const of = atBoost(psi, uncooled);
    expect(Math.abs((100 * figure(of, 'drivePower')) / figure(of, 'brakePower') - expected)).toBeLessThan(1);
  });
});

const FAHRENHEIT = (kelvin: number) => (kelvin - 273.15) * 1.8 + 32;
const POUND_A_MINUTE = 0.45359237 / 60;
const atEfficiency = (constantEfficiency: number): Partial<MatchInput> => ({
  compressor: { map: MAP, headScale: 1, efficiencyShift: 0, constantEfficiency },
});

test.each([
  [5, 0.65, 149],
  [5, 0.78, 137],
  [8, 0.72, 176],
  [10, 0.65, 209],
  [10, 0.72, 196],
  [12, 0.78, 205],
  [15, 0.72, 243],
])('%d psi at an efficiency of %d leaves at %d °F from air of 77 °F', (psi, efficiency, degrees) => {
  const discharge = figure(atBoost(psi, atEfficiency(efficiency)), 'dischargeTemperature');
  // The table rounds the pressure ratio to three digits and the temperature to a degree.
  expect(Math.abs(FAHRENHEIT(discharge) - degrees)).toBeLessThan(1.5);
});

test.each([
  [6, 0.47],
  [8, 0.6],
  [10, 0.73],
  [12, 0.85],
  [15, 1.02],
])('%d psi at an efficiency of 0.7 takes %d hp for each lb/min of air', (psi, horsepower) => {
  const of = atBoost(psi, atEfficiency(0.7));
  const each = figure(of, 'drivePower') / HORSEPOWER / (figure(of, 'compressorFlow') / POUND_A_MINUTE);
  expect(Math.abs(each - horsepower)).toBeLessThan(0.01);
});

test('an engine of 10.2 hp for each lb/min makes 8.9 to 10.2 under boost, for it drives the supercharger too', () => {
  for (const psi of [5, 10, 15]) {
    const of = atBoost(psi, atEfficiency(0.7));
    const each = figure(of, 'brakePower') / HORSEPOWER / (figure(of, 'airFlow') / POUND_A_MINUTE);
    expect(each).toBeGreaterThan(8.9);
    expect(each).toBeLessThan(10.2);
  }
});

test('uncooled against cooled at the same pulley: the charge-heat term is what an uncooled engine loses less by', () => {
  const cooler: MatchInput['cooler'] = {
    by: 'water',
    effectiveness: 0.8,
    coolantTemperature: 298.15,
    loss: { pressureDifference: 0, atFlow: 1, atDensity: 1 },
  };
  const missing = (heatExponent: number) => {
    const swallowing = { ...input().swallowing, heatExponent };
    const hot = figure(input({ swallowing }), 'airFlow');
    return 1 - hot / figure(input({ swallowing, cooler }), 'airFlow');
  };
  const temperatureRatio =
    figure(input({ cooler }), 'manifoldTemperature') / figure(input(), 'manifoldTemperature');
  // Air goes with density, or with density and the root: with this map's falling line less than the bare ratios would have it.
  expect(missing(0)).toBeGreaterThan(1.5 * missing(0.5));
  expect(missing(0)).toBeLessThan(1 - temperatureRatio);
  expect(missing(0.5)).toBeLessThan(1 - Math.sqrt(temperatureRatio));
  expect(missing(0.5)).toBeGreaterThan(0.03);
});
