import { expect, test } from 'vitest';
import { temperature } from '../quantity/index.ts';
import { saturationPressure } from './saturation-pressure.ts';

test('rises without a gap, also where ice gives way to water', () => {
  let last = 0;
  for (let kelvin = 173.15; kelvin <= 473.15; kelvin += 0.5) {
    const pascal = saturationPressure(temperature(kelvin));
    expect(pascal).toBeGreaterThan(last);
    last = pascal;
  }
  const ice = saturationPressure(temperature(273.16 - 1e-9));
  const water = saturationPressure(temperature(273.16));
  expect(Math.abs(ice / water - 1)).toBeLessThan(1e-5);
});

test('is not known outside -100 °C to 200 °C', () => {
  expect(saturationPressure(temperature(173))).toBeNaN();
  expect(saturationPressure(temperature(474))).toBeNaN();
});
