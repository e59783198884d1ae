/**
 * ICAO Doc 7488 (3rd ed., 1993) as quoted in the tests of an open atmosphere library, and ASHRAE Handbook of Fundamentals (2017), ch. 1, Table 1, as
 * quoted in the tests of PsychroLib 2.5.0. Rows marked worked were computed outside this code from the standard's definition.
 * Tolerance: the last printed digit.
 */
import { airState, densityAltitude, standardAtmosphere } from '@pullbook/core/air';
import { absolutePressure, temperature, toInside } from '@pullbook/core/quantity';
import { describe, expect, test } from 'vitest';

describe('at a geopotential altitude', () => {
  test.each([
    [-500, 291.4, 107_478, 1.28489, 1], // p: ASHRAE Table 1; rest worked
    [0, 288.15, 101_325, 1.225, 0.05], // ICAO
    [500, 284.9, 95_461, 1.16727, 1], // p: ASHRAE Table 1; rest worked
    [1000, 281.65, 89_874.6, 1.11164, 0.05], // worked; ASHRAE prints 89 875
    [1500, 278.4, 84_556, 1.05807, 0.05], // worked
    [2000, 275.15, 79_495.2, 1.00649, 0.05], // worked
    [3000, 268.65, 70_108.5, 0.909122, 0.05], // worked
    [4000, 262.15, 61_640, 0.819129, 1], // p: ASHRAE Table 1; rest worked
    [11_000, 216.65, 22_632, 0.363918, 0.5], // ICAO
  ])('%d m', (altitude, kelvin, pascal, density, tolerance) => {
    const air = standardAtmosphere(altitude);
    expect(air.temperature).toBeCloseTo(kelvin, 8);
    expect(Math.abs(air.pressure - pascal)).toBeLessThanOrEqual(tolerance);
    expect(Math.abs(air.density / density - 1)).toBeLessThan(5e-6);
  });
});

/** The ICAO table is entered by geometric height; taking its rows as geopotential is the trap. */
describe('at a geometric height, through the geopotential one', () => {
  const EARTH_RADIUS = 6_356_766;
  test.each([
    [1000, 89_876.3, 281.651, 1.11166],
    [2000, 79_501.4, 275.154, 1.00655],
  ])('%d m', (height, pascal, kelvin, density) => {
    const air = standardAtmosphere((EARTH_RADIUS * height) / (EARTH_RADIUS + height));
    expect(air.pressure).toBeCloseTo(pascal, 0);
    expect(air.temperature).toBeCloseTo(kelvin, 3);
    expect(Math.abs(air.density / density - 1)).toBeLessThan(5e-6);
    expect(standardAtmosphere(height).pressure).toBeLessThan(pascal - 1);
  });
});

describe('density altitude', () => {
  test('of the standard atmosphere at 1500 m is 1500 m', () => {
    expect(Math.abs(densityAltitude(1.058067) - 1500)).toBeLessThan(0.1);
  });

  test('35 °C, 98 kPa, 60 %: 1164.7 m with CIPM-2007 density, 1167.6 m with an ideal mixture; 5 m between methods', () => {
    const reading = airState({
      pressure: absolutePressure(98_000),
      temperature: temperature(toInside(35, '°C', 'temperature')),
      humidity: { route: 'relativeHumidity', ratio: 0.6 },
      altitude: null,
    });
    if (!reading.ok) throw new Error(reading.remarks[0]?.message);
    expect(Math.abs(reading.value.densityAltitude - 1164.7)).toBeLessThan(5);
    expect(Math.abs(reading.value.densityAltitude - 1167.6)).toBeLessThan(1);
  });
});
