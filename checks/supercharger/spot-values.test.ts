import {
  carburettorLoss,
  chargeHeatTerm,
  iceMelted,
  isentropicRise,
  lossFrom,
  NO_LOSS,
  pressureLost,
  pressureRatioFromRise,
  pressureTerm,
  stanitzSlip,
  tipSpeedOf,
} from '@pullbook/core/airpath';
import { describe, expect, test } from 'vitest';

/** As the textbooks have it: cp 1005 J/(kg·K), exponent 2/7. */
const EXPONENT = 2 / 7;
const CP = 1005;

describe('compression, worked outside this code', () => {
  test.each([
    [1.2, 15.943, 22.775],
    [1.4, 30.086, 42.979],
    [1.5, 36.62, 52.314],
    [1.6, 42.85, 61.215],
    [1.8, 54.521, 77.887],
    [2, 65.299, 93.284],
    [2.5, 89.225, 127.465],
    [3, 109.939, 157.056],
  ])(
    'pressure ratio %d from 298.15 K: %d K isentropic, %d K at an efficiency of 0.7',
    (ratio, ideal, actual) => {
      const rise = 298.15 * isentropicRise(ratio, EXPONENT);
      expect(rise).toBeCloseTo(ideal, 2);
      expect(rise / 0.7).toBeCloseTo(actual, 2);
      expect(pressureRatioFromRise(rise / 298.15, EXPONENT)).toBeCloseTo(ratio, 12);
    },
  );
  test('work at 1.5 and 70 % is 52.58 kW for each kg/s', () => {
    expect((CP * 298.15 * isentropicRise(1.5, EXPONENT)) / 0.7 / 1000).toBeCloseTo(52.576, 2);
  });
});

// Gorla and Khan, Turbomachinery, chapter 4: inputs and formulas seen in a public text, results worked outside. They use 3.5 or 0.286.
describe('Gorla and Khan: impeller work to pressure ratio', () => {
  const ratioOf = (work: number, efficiency: number, inlet: number) =>
    pressureRatioFromRise((efficiency * work) / (CP * inlet), EXPONENT);
  // These two are worked with an exponent rounded to 0.286.
  const ROUNDED = 0.286;
  test('4.4: 1 m at 5945 r/min, 86.77 K for 2.2 is 86.87 %', () => {
    const tip = tipSpeedOf(1, 5945);
    expect(tip).toBeCloseTo(311.28, 2);
    const work = 0.9 * tip * tip;
    expect(work / 1000).toBeCloseTo(87.205, 1);
    expect((298 * isentropicRise(2.2, ROUNDED)) / (work / CP)).toBeCloseTo(0.8687, 3);
  });
  test('4.6: 457 m/s, slip 0.95, 88 % gives 5.218', () => {
    expect(ratioOf(0.95 * 457 ** 2, 0.88, 288)).toBeCloseTo(5.2177, 2);
  });
  test('4.17: 17 vanes by Stanitz, 475 m/s, power input factor 1.04, 84 % gives 5.2005', () => {
    const work = 1.04 * stanitzSlip(17) * 475 ** 2;
    expect(work / 1000).toBeCloseTo(207.33, 1);
    expect(ratioOf(work, 0.84, 288)).toBeCloseTo(5.2005, 2);
    expect((2.5 * work) / 0.96 / 1000).toBeCloseTo(539.92, 1);
  });
  test('4.3: 0.58 m at 16 000 r/min, 4.2 at 82 %: slip 0.772', () => {
    const tip = tipSpeedOf(0.58, 16_000);
    expect(tip).toBeCloseTo(485.9, 1);
    const rise = (293 * isentropicRise(4.2, ROUNDED)) / 0.82;
    expect(rise).toBeCloseTo(181.33, 1);
    expect((CP * rise) / tip / tip).toBeCloseTo(0.77186, 3);
  });
});

describe('Gorla and Khan: slip, work and the triangle at the exit', () => {
  // The triangles are worked here; slip, compression and density come from the program.
  test('2.13: a slip of 0.78 by Stanitz is nine vanes', () => {
    const vanes = (0.63 * Math.PI) / (1 - 0.78);
    expect(vanes).toBeCloseTo(8.996, 3);
    expect(stanitzSlip(9)).toBeCloseTo(0.78, 3);
  });

  test('4.1: backswept to 25.5°, 475 m/s, radial 110 m/s: slip 0.8895, 4.49, 602 kW, 627 at the shaft', () => {
    const slip = 1 - (110 * Math.tan((25.5 * Math.PI) / 180)) / 475;
    expect(slip).toBeCloseTo(0.88954, 5);
    const work = slip * 475 ** 2;
    expect(pressureRatioFromRise((0.8 * work) / (CP * 298), EXPONENT)).toBeCloseTo(4.4925, 3);
    expect((3 * work) / 1000).toBeCloseTo(602.11, 2);
    expect((3 * work) / 0.96 / 1000).toBeCloseTo(627.2, 1);
  });

  test('4.10: 4 at 89 %, slip 0.89, 15 000 r/min: 168.6 K, 436.4 m/s, a wheel of 0.5556 m, 1356 kW', () => {
    const inlet = 298 + 145 ** 2 / (2 * CP);
    expect(inlet).toBeCloseTo(308.46, 2);
    const rise = (inlet * isentropicRise(4, 0.286)) / 0.89;
    expect(rise).toBeCloseTo(168.64, 1);
    const tip = Math.sqrt((CP * rise) / 0.89);
    expect(tip).toBeCloseTo(436.39, 1);
    expect(tipSpeedOf(0.5556, 15_000)).toBeCloseTo(tip, 1);
    expect((8 * CP * rise) / 1000).toBeCloseTo(1355.9, 0);
  });

  test('4.14: 364 m/s, slip 0.89, 288 K, 88 %: 405.3 K, 2.922, at the exit Mach 0.864, 1.775 kg/m³, 4.22 kg/s', () => {
    const whirl = 0.89 * 364;
    const speed = Math.hypot(whirl, 28);
    expect([whirl, speed].map((one) => one.toFixed(2))).toEqual(['323.96', '325.17']);
    const total = 288 + (whirl * 364) / CP;
    expect(total).toBeCloseTo(405.33, 2);
    const ratio = pressureRatioFromRise((0.88 * (total - 288)) / 288, EXPONENT);
    expect(ratio).toBeCloseTo(2.9224, 3);
    const still = total - speed ** 2 / (2 * CP);
    expect(still).toBeCloseTo(352.73, 2);
    expect(speed / Math.sqrt(1.4 * 287 * still)).toBeCloseTo(0.86374, 3);
    const pressure = 100_000 * ratio * (still / total) ** (1 / EXPONENT);
    expect(pressure / 1000).toBeCloseTo(179.65, 1);
    const density = pressure / (287 * still);
    expect(density).toBeCloseTo(1.77465, 3);
    expect(density * 0.085 * 28).toBeCloseTo(4.2237, 2);
  });
});

test('Dixon, example 7.2 (from a solution sheet, "small errors in the textbook"): its triangle, and the size of the slip', () => {
  // 30° of prewhirl at the tip of 8.83 cm, hub to tip 0.4, 7405 rad/s, 1 kg/s at 101.3 kPa and 288 K, relative flow at 49.4°, 187.4 m/s axial.
  const axial = 187.4;
  const tip = tipSpeedOf(0.0883, (7405 * 60) / (2 * Math.PI));
  expect(tip).toBeCloseTo(326.8, 0);
  const whirl = axial * Math.tan(Math.PI / 6);
  expect((Math.atan2(tip - whirl, axial) * 180) / Math.PI).toBeCloseTo(49.4, 1);
  const area = (Math.PI / 4) * 0.0883 ** 2 * (1 - 0.4 ** 2);
  expect(1.04 * axial * area).toBeCloseTo(1, 2);
  // The printed density of 1.04 kg/m³ is that of axial speed alone; with the prewhirl in it is 5 % less, and Mach 0.9 is 0.88.
  const densityAt = (speed: number) => {
    const still = 288 - speed ** 2 / (2 * CP);
    return (101_300 * pressureRatioFromRise(still / 288 - 1, EXPONENT)) / (287 * still);
  };
  expect(densityAt(axial)).toBeCloseTo(1.045, 2);
  expect(densityAt(Math.hypot(axial, whirl)) / 1.04).toBeCloseTo(0.955, 2);
  const sound = Math.sqrt(1.4 * 287 * (288 - (axial ** 2 + whirl ** 2) / (2 * CP)));
  expect(Math.hypot(axial, tip - whirl) / sound).toBeCloseTo(0.883, 2);
});

test('Saravanamuttoo, Gas Turbine Theory, example 4.1 (from memory): 193 K, 4.23, 1746 kW', () => {
  const work = 1.04 * 0.9 * tipSpeedOf(0.5, 290 * 60) ** 2;
  expect(work / CP).toBeCloseTo(193.26, 1);
  // Printed 4.23 with the rise rounded to 193 K; without rounding 4.24.
  expect(pressureRatioFromRise((0.78 * 193) / 295, EXPONENT)).toBeCloseTo(4.23, 2);
  expect((9 * 1.005 * 193) / 1746).toBeCloseTo(1, 3);
});

test('Dixon, Fluid Mechanics and Thermodynamics of Turbomachinery, example 7.4 (from a solution sheet): 4.2 at 83 %', () => {
  // 17 radial vanes, slip 1 - 2/Z, 22 °C, 15 000 r/min: 452.86 m/s, so the wheel has a radius of 288.3 mm; 373.1 kW at 97 %.
  const work = (1004 * 295.15 * isentropicRise(4.2, EXPONENT)) / 0.83;
  const tip = Math.sqrt(work / (1 - 2 / 17));
  expect(tip).toBeCloseTo(452.86, 0);
  expect(tipSpeedOf(2 * 0.2883, 15_000)).toBeCloseTo(tip, 0);
  expect((2 * work) / 0.97 / 1000).toBeCloseTo(373.1, 0);
});

describe('losses', () => {
  test('twice the flow loses four times, denser air less', () => {
    const loss = lossFrom({ pressureDifference: 1000, atFlow: 0.3, atDensity: 1.2 });
    expect(pressureLost(loss, { flow: 0.3, density: 1.2 })).toBeCloseTo(1000, 9);
    expect(pressureLost(loss, { flow: 0.6, density: 1.2 })).toBeCloseTo(4000, 9);
    expect(pressureLost(loss, { flow: 0.6, density: 2.4 })).toBeCloseTo(2000, 9);
  });
  test('flow through an opening goes with the root of pressure: x 1.36626 from 15 to 28 inH2O, worked outside', () => {
    const loss = carburettorLoss({ volumeFlow: 0.2, pressureDifference: 15 * 249.089, density: 1.2 });
    expect(pressureLost(loss, { flow: 0.24 * 1.36626, density: 1.2 })).toBeCloseTo(28 * 249.089, 0);
  });
  test('nothing told of the flow: nothing lost', () => {
    expect(lossFrom({ pressureDifference: 1000, atFlow: 0 })).toEqual(NO_LOSS);
    expect(pressureLost(NO_LOSS, { flow: 0.5, density: 1 })).toBe(0);
  });
});

describe('ice', () => {
  test('30 kW for 10 s melt about 0.9 kg, 57 kW 1.7 kg (common practice, no source; 334 kJ/kg)', () => {
    expect(iceMelted(300_000, 273.15)).toBeCloseTo(0.9, 1);
    expect(iceMelted(570_000, 273.15)).toBeCloseTo(1.7, 1);
  });
  test('water that ends at 10 °C has taken up warming too: 12.5 % less ice, by hand', () => {
    expect(iceMelted(1e6, 283.15) / iceMelted(1e6, 273.15)).toBeCloseTo(334 / (334 + 41.86), 9);
  });
});

describe('the two terms of swallowing', () => {
  test('pressure: 1 at equal pressures, r / (r - 1) at most', () => {
    const at = { compressionRatio: 9.5, ratioOfSpecificHeats: 1.4 };
    expect(pressureTerm({ ...at, exhaustOverManifold: 1 })).toBe(1);
    // By hand: 1 + 0.4 / (1.4 x 8.5)
    expect(pressureTerm({ ...at, exhaustOverManifold: 0.6 })).toBeCloseTo(1.0336134, 6);
    expect(pressureTerm({ ...at, exhaustOverManifold: 0 })).toBeLessThan(9.5 / 8.5);
    expect(pressureTerm({ ...at, ratioOfSpecificHeats: 0.5, exhaustOverManifold: 0 })).toBeCloseTo(
      9.5 / 8.5,
      12,
    );
    expect(pressureTerm({ ...at, exhaustOverManifold: 50 })).toBe(0);
  });
  test('heat: the root of the temperature ratio, or nothing', () => {
    expect(chargeHeatTerm({ manifold: 400, baseline: 300, exponent: 0.5 })).toBeCloseTo(1.1547, 4);
    expect(chargeHeatTerm({ manifold: 400, baseline: 300, exponent: 0 })).toBe(1);
  });
});
