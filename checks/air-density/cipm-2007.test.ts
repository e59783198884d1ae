/**
 * Our ideal-gas density against CIPM-2007, the metrologists' formula (source in cipm-2007.ts). Ours must lie 1e-4 to 5e-4 below: we take the air as
 * ideal (compressibility 0.9996 to 0.9998) and without the enhancement factor (1.004), and their dry air weighs 2e-5 less.
 */
import { type AirState, airState } from '@pullbook/core/air';
import { absolutePressure, ICE_POINT, temperature } from '@pullbook/core/quantity';
import { describe, expect, test } from 'vitest';
import { densityCipm2007 } from './cipm-2007.ts';

/** Worked outside this code from the published equation, six decimals. */
describe('the formula as written down here', () => {
  test.each([
    [20, 101_325, 0.5, 1.199314, 0.99961477, 0.01158934],
    [20, 101_325, 0, 1.204557, 0.99964314, 0],
    [25, 99_000, 0, 1.157118, 0.99969754, 0],
    [30, 98_000, 0.6, 1.115447, 0.99967141, 0.02611004],
  ])('%d °C, %d Pa, %d', (celsius, pascal, relativeHumidity, density, compressibility, fraction) => {
    const cipm = densityCipm2007({ celsius, pascal, relativeHumidity });
    expect(cipm.density).toBeCloseTo(density, 6);
    expect(cipm.compressibility).toBeCloseTo(compressibility, 8);
    expect(cipm.waterMoleFraction).toBeCloseTo(fraction, 7);
  });
});

describe('our density, 60 to 105 kPa, 15 to 35 °C, 0 to 90 %', () => {
  test.each([60_000, 80_000, 90_000, 98_200, 105_000])('%d Pa', (pascal) => {
    for (const celsius of [15, 20, 25, 30, 35]) {
      for (const relativeHumidity of [0, 0.3, 0.6, 0.9]) {
        const cipm = densityCipm2007({ celsius, pascal, relativeHumidity });
        const off = airAt(celsius, pascal, relativeHumidity).density / cipm.density - 1;
        expect(off, `${celsius} °C, ${relativeHumidity}`).toBeGreaterThan(-5e-4);
        expect(off, `${celsius} °C, ${relativeHumidity}`).toBeLessThan(-1e-4);
      }
    }
  });
});

/** Documentation of an open psychrometric package in another language: 293.15 K, 101 325 Pa. It has neither our gas constant nor our compressibility: 4e-4. */
test.each([
  [0, 1.204478],
  [0.7, 1.197144],
])('another package, %d', (relativeHumidity, printed) => {
  expect(Math.abs(airAt(20, 101_325, relativeHumidity).density / printed - 1)).toBeLessThan(4e-4);
});

function airAt(celsius: number, pascal: number, ratio: number): AirState {
  const reading = airState({
    pressure: absolutePressure(pascal),
    temperature: temperature(celsius + ICE_POINT),
    humidity: { route: 'relativeHumidity', ratio },
    altitude: null,
  });
  if (!reading.ok) throw new Error(reading.remarks[0]?.message);
  return reading.value;
}
