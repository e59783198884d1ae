/**
 * The open library PsychroLib, run beside ours over the air that engines are tested in. It implements the same chapter of the same handbook, so
 * this shows that nothing was typed wrong, not that the chapter is right: "reproduces a reference we share ancestry with".
 */
import {
  airState,
  densityOfMoistAir,
  dewPointFromVapourPressure,
  dryPressureFromBarometer,
  humidityRatioFromVapourPressure,
  saturationPressure,
  standardAtmosphere,
  vapourPressureFromWetBulb,
  wetBulbFromVapourPressure,
} from '@pullbook/core/air';
import { absolutePressure, ICE_POINT, temperature } from '@pullbook/core/quantity';
import psychrolib from 'psychrolib';
import { describe, expect, test } from 'vitest';

psychrolib.SetUnitSystem(psychrolib.SI);

const TEMPERATURES = [-15, -3, 5, 15, 25, 35, 45];
const HUMIDITIES = [0.1, 0.45, 0.9];
const PRESSURES = [80_000, 98_200, 103_000];

test('saturation pressure from -60 °C to 150 °C', () => {
  for (let celsius = -60; celsius <= 150; celsius += 5) {
    const theirs = psychrolib.GetSatVapPres(celsius);
    expect(
      Math.abs(saturationPressure(temperature(celsius + ICE_POINT)) / theirs - 1),
      `${celsius} °C`,
    ).toBeLessThan(1e-12);
  }
});

describe.each(TEMPERATURES)('%d °C', (celsius) => {
  test.each(HUMIDITIES)('%d', (ratio) => {
    for (const pascal of PRESSURES) {
      const reading = airState({
        pressure: absolutePressure(pascal),
        temperature: temperature(celsius + ICE_POINT),
        humidity: { route: 'relativeHumidity', ratio },
        altitude: null,
      });
      if (!reading.ok) throw new Error(reading.remarks[0]?.message);
      const air = reading.value;

      const humidityRatio = psychrolib.GetHumRatioFromRelHum(celsius, ratio, pascal);
      // They round the ratio of molar masses to 0.621945 and the gas constant to 287.042.
      expect(Math.abs(air.humidityRatio / humidityRatio - 1)).toBeLessThan(2e-6);
      expect(
        Math.abs(air.density / psychrolib.GetMoistAirDensity(celsius, humidityRatio, pascal) - 1),
      ).toBeLessThan(2e-6);
      // Their iterations stop at 0.001 °C.
      expect(
        Math.abs(air.dewPoint! - ICE_POINT - psychrolib.GetTDewPointFromRelHum(celsius, ratio)),
      ).toBeLessThan(2e-3);
      const wetBulb = wetBulbFromVapourPressure(air)! - ICE_POINT;
      expect(Math.abs(wetBulb - psychrolib.GetTWetBulbFromRelHum(celsius, ratio, pascal))).toBeLessThan(2e-3);
    }
  });
});

test('humidity ratio from wet bulb', () => {
  for (const [celsius, wetBulb] of [
    [30, 25],
    [20, 12],
    [2, 0.5],
    [-1, -3],
    [40, 18],
  ] as const) {
    const pressure = absolutePressure(98_200);
    const vapourPressure = vapourPressureFromWetBulb({
      pressure,
      temperature: temperature(celsius + ICE_POINT),
      wetBulb: temperature(wetBulb + ICE_POINT),
    });
    const ours = humidityRatioFromVapourPressure({ pressure, vapourPressure });
    const theirs = psychrolib.GetHumRatioFromTWetBulb(celsius, wetBulb, 98_200);
    expect(Math.abs(ours / theirs - 1), `${celsius} and ${wetBulb} °C`).toBeLessThan(2e-5);
  }
});

test('a wrong humidity would be seen: dry air instead of 45 % at 25 °C moves the density by 0.5 %', () => {
  const pressure = absolutePressure(98_200);
  const density = densityOfMoistAir({
    dryPressure: dryPressureFromBarometer({ pressure, vapourPressure: absolutePressure(0) }),
    vapourPressure: absolutePressure(0),
    temperature: temperature(25 + ICE_POINT),
  });
  const moist = psychrolib.GetMoistAirDensity(25, psychrolib.GetHumRatioFromRelHum(25, 0.45, 98_200), 98_200);
  expect(density / moist - 1).toBeGreaterThan(4e-3);
});

test('dry air has no dew point', () => {
  expect(dewPointFromVapourPressure(absolutePressure(0))).toBeNull();
});

test('pressure of the standard atmosphere (their form has rounded constants: 2e-5)', () => {
  for (const altitude of [0, 300, 1000, 2000, 3000]) {
    const theirs = psychrolib.GetStandardAtmPressure(altitude);
    expect(Math.abs(standardAtmosphere(altitude).pressure / theirs - 1), `${altitude} m`).toBeLessThan(2e-5);
  }
});
