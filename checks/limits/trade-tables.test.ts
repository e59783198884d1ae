import { describe, expect, test } from 'vitest';
import { fuelOfTest, limitOf, type PlannedTest } from '../../packages/core/src/rule/limit/planned.testing.ts';

// Tables of the trade as typed by hand, held against the limits of an engine whose figures are given: a slip of a unit or of a
// formula anywhere between sheet, curve and limit shows. Common practice or from memory, no source, where no source is beside.

const PSI = 6894.757293168;
const HP = 745.69987;
const POUND_FORCE = 4.4482216;
const POUND_AN_HOUR = 0.45359237 / 3600;

/** The drive the trade's powers of belts are told of. */
const TOLD_OF = { crankPulleyDiameter: 7.5 * 0.0254, wrapAngle: (170 * Math.PI) / 180 };

describe('valve springs: boost on the intake valve, lbf at 8, 12, 15, 20, 25 psi (derived: pressure times the valve’s area)', () => {
  const BOOSTS = [8, 12, 15, 20, 25];
  test.each([
    ['1.94 in', [24, 35, 44, 59, 74]],
    ['2.02 in', [26, 38, 48, 64, 80]],
    ['2.08 in', [27, 41, 51, 68, 85]],
    ['2.165 in', [29, 44, 55, 74, 92]],
    ['2.25 in', [32, 48, 60, 80, 99]],
  ])('%s', (intakeValveDiameter, pounds) => {
    const force = BOOSTS.map((psi) => {
      const heads = { intakeValveDiameter, springSeatLoad: '100 lbf' };
      return 100 * limitOf('valveSpring', { sheet: { heads }, figures: { boost: psi * PSI } })!.value;
    });
    for (const [place, one] of force.entries()) expect(Math.abs(one - pounds[place]!)).toBeLessThan(0.6);
  });
  test('the force in words is in newtons: 48 lbf is 213 N', () => {
    const heads = { intakeValveDiameter: '2.02 in', springSeatLoad: '130 lbf' };
    const { said } = limitOf('valveSpring', { sheet: { heads }, figures: { boost: 15 * PSI } })!;
    expect(said.text).toContain(`${Math.round((Math.PI / 4) * 2.02 ** 2 * 15 * POUND_FORCE)} N`);
  });
});

describe('piston speed: engine speed at which it is reached (r/min), stroke times two', () => {
  // Mean piston speed in ft/min is stroke in inches times r/min over six (book "Performance Automotive Engine Math").
  test.each([
    ['3.00 in', 'cast', 7000],
    ['3.48 in', 'cast', 6030],
    ['3.622 in', 'cast', 5800],
    ['4.25 in', 'cast', 4940],
    ['3.00 in', 'forged', 8000],
    ['3.48 in', 'forged', 6900],
    ['3.622 in', 'forged', 6630],
    ['4.00 in', 'forged', 6000],
    ['4.50 in', 'forged', 5330],
  ])('%s, %s: %i', (stroke, pistons, rpm) => {
    const shortBlock = { stroke, pistons };
    const { margin } = limitOf('pistonSpeed', { sheet: { shortBlock }, highestEngineSpeedRpm: rpm })!;
    // Printed to ten r/min.
    expect(Math.abs(margin * rpm)).toBeLessThan(7);
  });
});

describe('compression, boost and fuel: upper ends, psi', () => {
  const cooler: NonNullable<PlannedTest['input']> = {
    cooler: {
      by: 'water',
      effectiveness: 0.75,
      coolantTemperature: null,
      loss: { pressureDifference: 0, atFlow: 1, atDensity: 1 },
    },
  };
  test.each([
    ['8.25', 10, 15, 30],
    ['9.25', 7, 12, 25],
    ['10.25', 5, 9, 20],
    ['11.25', 0, 7, 16],
  ])('%s:1', (compressionRatio, uncooled, cooled, alcohol) => {
    const at = (fuel: string, input: PlannedTest['input']) =>
      limitOf('fuelAndCompression', {
        sheet: { shortBlock: { compressionRatio } },
        figures: { boost: 5 * PSI },
        supply: { fuel: fuelOfTest(fuel) },
        ...(input === undefined ? {} : { input }),
      })!.threshold / PSI;
    expect(at('gasoline', undefined)).toBeCloseTo(uncooled, 6);
    expect(at('gasoline', cooler)).toBeCloseTo(cooled, 6);
    expect(at('e85', cooler)).toBeCloseTo(alcohol, 6);
  });
});

describe('belts: power of the drive that ribs serve at most, hp', () => {
  test.each([
    [6, 45],
    [8, 75],
    [10, 110],
  ])('%i ribs: %i', (ribs, horsepower) => {
    const drivePower: [number, number, number] = [1e3, 2e3, horsepower * HP];
    const { value, engineSpeedRpm } = limitOf('belt', {
      figures: { drivePower },
      input: { drive: { ...TOLD_OF, ribs } },
    })!;
    expect(Math.abs(value - 1)).toBeLessThan(2e-3);
    expect(engineSpeedRpm).toBe(6500);
  });
});

describe('fuel: total flow by power and consumption, eight injectors at 85 % of the time, pump with 20 % to spare', () => {
  test.each([
    // Fuel, hp, lb/(hp·h), lb/h of each injector, L/h of the pump.
    ['gasoline', 500, 0.5, 37, 185],
    ['gasoline', 700, 0.6, 62, 310],
    ['gasoline', 1000, 0.6, 88, 445],
    ['e85', 1000, 0.85, 125, 590],
    ['methanol', 1500, 1.3, 287, 1340],
  ])('%s, %i hp', (name, horsepower, consumption, each, litresAnHour) => {
    const fuel = fuelOfTest(name);
    const flow = horsepower * consumption * POUND_AN_HOUR;
    const test: PlannedTest = {
      figures: { airFlow: flow * 0.8 * fuel.stoichiometricAirFuelRatio, manifoldPressure: 99_000 },
      supply: {
        fuel,
        rail: { pressure: 3e5, reference: 'manifold' },
        injectors: {
          count: 8,
          flow: each * POUND_AN_HOUR,
          ratedDensity: fuel.density,
          ratedPressure: 3e5,
          deadTime: null,
        },
        pump: {
          name: 'pump',
          ratedVoltage: 13.5,
          voltage: 13.5,
          points: [{ pressure: 3e5, flow: litresAnHour / 3.6e6 }],
        },
      },
    };
    // Sizes are printed whole: half of the last digit of 37 is 1.4 %.
    expect(Math.abs(limitOf('injectors', test)!.value - 0.85)).toBeLessThan(0.014 * 0.85);
    // The table took 6.2 lb/gal of gasoline and 6.5 to 6.6 of the alcohols.
    expect(Math.abs(limitOf('pump', test)!.value - 1.2)).toBeLessThan(0.03);
  });

  test.each([
    [8.7, 500],
    [11.1, 900],
    [14.3, 1400],
  ])('a line of %f mm serves gasoline for some %i hp', (millimetre, horsepower) => {
    const fuel = fuelOfTest('gasoline');
    const airFlow = horsepower * 0.6 * POUND_AN_HOUR * 0.8 * fuel.stoichiometricAirFuelRatio;
    const { margin } = limitOf('fuelLine', {
      figures: { airFlow },
      supply: { fuel, lineDiameter: millimetre / 1000 },
    })!;
    expect(Math.abs(margin)).toBeLessThan(0.12);
  });
});

describe('ring gap: 0.0050 in for each inch of bore above 8 psi (forum-quoted factor list)', () => {
  test.each([
    ['4.00 in', 0.02],
    ['4.125 in', 0.0206],
    ['3.78 in', 0.0189],
  ])('%s', (bore, inches) => {
    const shortBlock = { bore, topRingGap: '0.4 mm' };
    const { threshold } = limitOf('ringGap', { sheet: { shortBlock }, figures: { boost: 9 * PSI } })!;
    expect(threshold / 0.0254).toBeCloseTo(inches, 4);
  });
});

describe('drive: impeller speed by pulleys and step-up, over-rev counted, without slip', () => {
  // 165 mm x 3.6 x (6,700 + 200) / 52,000 is 78.82 mm; 7.5 in over 3.25 in x 4.1 at 6,500 + 200 is 63,392 r/min.
  test.each([
    [165, 78.82, 3.6, 6700, 52_000],
    [190.5, 82.55, 4.1, 6500, 63_392],
  ])('%f over %f mm, step-up %f, stopped at %i: %i', (crank, blower, stepUp, rpm, impeller) => {
    const { value } = limitOf('impellerSpeed', {
      highestEngineSpeedRpm: rpm,
      input: { drive: { pulleyRatio: crank / blower, stepUp, maximumImpellerSpeedRpm: 52_000, slip: 0.03 } },
    })!;
    expect(Math.abs(value / impeller - 1)).toBeLessThan(1e-4);
  });
});
