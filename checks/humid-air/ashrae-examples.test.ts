/**
 * ASHRAE Handbook of Fundamentals (2017), ch. 1: Table 2, Example 1 and the values that the tests of the open library PsychroLib 2.5.0 quote
 * from it. Tolerances are those of the quotation: the print rounds, and its own tables come from a real-gas formulation.
 */
import {
  type AirState,
  airState,
  densityOfMoistAir,
  dewPointFromVapourPressure,
  type Humidity,
  humidityRatioFromVapourPressure,
  saturationPressure,
  vapourPressureFromHumidityRatio,
  wetBulbFromVapourPressure,
} from '@pullbook/core/air';
import { absolutePressure, ICE_POINT, temperature } from '@pullbook/core/quantity';
import { describe, expect, test } from 'vitest';

test('humidity ratio from vapour pressure: 3169.7 Pa in 95 461 Pa', () => {
  const ratio = humidityRatioFromVapourPressure({
    pressure: absolutePressure(95_461),
    vapourPressure: absolutePressure(3169.7),
  });
  expect(Math.abs(ratio - 0.0213603998)).toBeLessThan(1e-6);
});

describe('humidity ratio from wet bulb at 95 461 Pa', () => {
  test.each([
    [30, 25, 0.0192281274],
    [-1, -5, 0.0012039982],
  ])('%d °C, wet bulb %d °C', (celsius, wetBulb, expected) => {
    const air = airAt(celsius, 95_461, { route: 'wetBulb', temperature: temperature(wetBulb + ICE_POINT) });
    expect(Math.abs(air.humidityRatio / expected - 1)).toBeLessThan(3e-4);
  });
});

test('wet bulb of 7 °C and 61 % at 100 kPa is 3.92667 °C', () => {
  const air = airAt(7, 100_000, { route: 'relativeHumidity', ratio: 0.61 });
  expect(Math.abs(wetBulbFromVapourPressure(air)! - ICE_POINT - 3.92667)).toBeLessThan(1e-3);
});

describe('dew point', () => {
  test.each([
    [25, 0.8, 21.3094, 1e-3],
    [25, 0.3156, 6.974, 5e-3],
    [35, 0.6, 26.068, 5e-3],
  ])('%d °C, %d', (celsius, ratio, expected, tolerance) => {
    const air = airAt(celsius, 100_000, { route: 'relativeHumidity', ratio });
    expect(Math.abs(air.dewPoint! - ICE_POINT - expected)).toBeLessThan(tolerance);
  });
});

test('Example 1: 40 °C, wet bulb 20 °C, 101 325 Pa', () => {
  const air = airAt(40, 101_325, { route: 'wetBulb', temperature: temperature(20 + ICE_POINT) });
  expect(Math.abs(air.humidityRatio - 0.0065)).toBeLessThan(1e-4);
  expect(Math.abs(air.relativeHumidity - 0.14)).toBeLessThan(0.01);
  expect(Math.abs(air.dewPoint! - ICE_POINT - 7)).toBeLessThan(0.5);
  const volumeOfDryAir = (1 + air.humidityRatio) / air.density;
  expect(Math.abs(volumeOfDryAir / 0.896 - 1)).toBeLessThan(0.01);
});

test('volume of dry air at 25 °C and 101 325 Pa is 0.8443 m³/kg', () => {
  const air = airAt(25, 101_325, { route: 'relativeHumidity', ratio: 0 });
  expect(Math.abs(1 / air.density / 0.8443 - 1)).toBeLessThan(1e-3);
});

test('moist air at 30 °C, humidity ratio 0.02, 95 461 Pa: 0.940855 m³ per kg of dry air, 1.084120 kg/m³', () => {
  const pressure = absolutePressure(95_461);
  const vapourPressure = vapourPressureFromHumidityRatio({ pressure, humidityRatio: 0.02 });
  const density = densityOfMoistAir({
    dryPressure: absolutePressure(pressure - vapourPressure),
    vapourPressure,
    temperature: temperature(30 + ICE_POINT),
  });
  expect(Math.abs(density / 1.08412 - 1)).toBeLessThan(3e-4);
  expect(Math.abs(1.02 / density / 0.940855 - 1)).toBeLessThan(3e-4);
});

test('saturated air at 25 °C and 101 325 Pa holds 0.020173 (real gas: 5e-3)', () => {
  const ratio = humidityRatioFromVapourPressure({
    pressure: absolutePressure(101_325),
    vapourPressure: absolutePressure(saturationPressure(temperature(25 + ICE_POINT))),
  });
  expect(Math.abs(ratio / 0.020173 - 1)).toBeLessThan(5e-3);
});

test('frost point: -6.010 °C over ice for 10 °C and 30 %, worked outside this code', () => {
  expect(dewPointFromVapourPressure(absolutePressure(368.398583))! - ICE_POINT).toBeCloseTo(-6.010478, 2);
});

function airAt(celsius: number, pascal: number, humidity: Humidity): AirState {
  const reading = airState({
    pressure: absolutePressure(pascal),
    temperature: temperature(celsius + ICE_POINT),
    humidity,
    altitude: null,
  });
  if (!reading.ok) throw new Error(reading.remarks[0]?.message);
  return reading.value;
}
