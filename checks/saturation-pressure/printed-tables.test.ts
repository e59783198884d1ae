/**
 * ASHRAE Handbook of Fundamentals (2017), ch. 1, Table 3 (SI and IP), as quoted in the tests of the open psychrometric library PsychroLib 2.5.0.
 * Tolerance 3e-4: the table comes from a later formula than the equations printed beside it.
 *
 * IAPWS Industrial Formulation 1997 for water and steam, Table 35, as quoted in the tests of an open IAPWS library; between those points the
 * formulation worked outside this code. An older and another formula: 2e-4 between 0 °C and 50 °C is what separates the two.
 */
import { saturationPressure } from '@pullbook/core/air';
import { fromInside, temperature, toInside } from '@pullbook/core/quantity';
import { describe, expect, test } from 'vitest';

describe('ASHRAE Table 3, over ice and water', () => {
  test.each([
    [-20, 103.24],
    [-5, 401.74],
    [5, 872.6],
    [25, 3169.7],
    [50, 12_351.3],
    [100, 101_418],
    [150, 476_101.4],
  ])('%d °C', (celsius, printed) => {
    const pascal = saturationPressure(temperature(toInside(celsius, '°C', 'temperature')));
    expect(Math.abs(pascal / printed - 1)).toBeLessThan(3e-4);
  });

  test.each([
    [77, 0.45973],
    [122, 1.7914],
    [212, 14.7094],
  ])('%d °F, psia', (fahrenheit, printed) => {
    const pascal = saturationPressure(temperature(toInside(fahrenheit, '°F', 'temperature')));
    expect(Math.abs(fromInside(pascal, 'psia') / printed - 1)).toBeLessThan(3e-4);
  });
});

describe('IAPWS-IF97', () => {
  test('300 K, Table 35', () => {
    expect(Math.abs(saturationPressure(temperature(300)) / 3536.58941 - 1)).toBeLessThan(2e-4);
  });

  test.each([
    [0.01, 611.657],
    [10, 1228.184],
    [20, 2339.215],
    [25, 3169.747],
    [30, 4246.688],
    [40, 7384.427],
    [50, 12_351.27],
  ])('%d °C', (celsius, formulation) => {
    const pascal = saturationPressure(temperature(toInside(celsius, '°C', 'temperature')));
    expect(Math.abs(pascal / formulation - 1)).toBeLessThan(2e-4);
  });

  test('boils at 372.755919 K under 0.1 MPa (Table 36)', () => {
    expect(Math.abs(saturationPressure(temperature(372.755919)) / 100_000 - 1)).toBeLessThan(3e-4);
  });
});

test('the formula itself, worked outside this code: 1e-6', () => {
  const worked: [number, number][] = [
    [10, 1227.995],
    [20, 2338.804],
    [30, 4246.03],
    [40, 7383.46],
  ];
  for (const [celsius, pascal] of worked) {
    const ours = saturationPressure(temperature(toInside(celsius, '°C', 'temperature')));
    expect(Math.abs(ours / pascal - 1), `${celsius} °C`).toBeLessThan(1e-6);
  }
});
