/**
 * A table of factors to three decimals, worked by hand from the formulas with temperature in °F + 460 over 520 for J607 (the habit
 * of the trade); and an example of a published page on correction factors: 400 hp at 85 °F, 85 % and 28.85 inHg and 442 hp at 55 °F, 35 % and
 * 30.10 inHg are the same engine, about 440 hp by J607 (factors 1.1005 and 0.994). The page is known at second hand, and its vapour pressure
 * is not: 1e-3 of the factor is 0.025 inHg of vapour. Tolerance of the table: its rounding.
 */
import { airState, CORRECTIONS, type CorrectionId, correctPower } from '@pullbook/core/air';
import { absolutePressure, temperature, toInside } from '@pullbook/core/quantity';
import { describe, expect, test } from 'vitest';

const STANDARDS: CorrectionId[] = ['sae-j1349', 'sae-j607', 'iso-1585', 'din-70020'];

describe('dry pressure, temperature and the four factors', () => {
  test.each([
    [99, 25, 1.0, 1.04, 1.0, 1.032],
    [99, 15, 0.98, 1.023, 0.98, 1.015],
    [99, 35, 1.02, 1.057, 1.02, 1.049],
    [95, 30, 1.06, 1.093, 1.061, 1.084],
    [90, 25, 1.118, 1.144, 1.121, 1.135],
    [85, 25, 1.194, 1.211, 1.201, 1.202],
    [101.3, 15, 0.954, 0.999, 0.953, 0.991],
  ])('%d kPa, %d °C', (kilopascal, celsius, ...expected) => {
    const air = airAt(kilopascal * 1000, toInside(celsius, '°C', 'temperature'), 0);
    STANDARDS.forEach((id, column) => {
      expect(Math.abs(CORRECTIONS[id].factor(air) - expected[column]!), id).toBeLessThan(6e-4);
    });
  });
});

test('two days, one engine', () => {
  const humidDay = airAt(
    toInside(28.85, 'inHg', 'absolutePressure'),
    toInside(85, '°F', 'temperature'),
    0.85,
  );
  const crispDay = airAt(toInside(30.1, 'inHg', 'absolutePressure'), toInside(55, '°F', 'temperature'), 0.35);
  const { factor } = CORRECTIONS['sae-j607'];
  expect(Math.abs(factor(humidDay) - 1.1005)).toBeLessThan(1e-3);
  expect(Math.abs(factor(crispDay) - 0.994)).toBeLessThan(1e-3);
  expect(Math.abs(correctPower(400, factor(humidDay)) - 440)).toBeLessThan(1);
  expect(Math.abs(correctPower(442, factor(crispDay)) - 440)).toBeLessThan(1);
});

function airAt(pascal: number, kelvin: number, ratio: number) {
  const reading = airState({
    pressure: absolutePressure(pascal),
    temperature: temperature(kelvin),
    humidity: { route: 'relativeHumidity', ratio },
    altitude: null,
  });
  if (!reading.ok) throw new Error(reading.remarks[0]?.message);
  return reading.value;
}
