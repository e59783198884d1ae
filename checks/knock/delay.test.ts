import { ignitionDelay, knockIntegral } from '@pullbook/core/fuel';
import { toInside } from '@pullbook/core/quantity';
import { describe, expect, test } from 'vitest';

/**
 * Douaud and Eyzat, SAE 780080, as Heywood prints it (eq. 9.15): the formula from memory, its values worked outside this code to seven figures. Livengood and
 * Wu (1955): the form from memory, one and two steps worked likewise.
 */
const atmospheres = (count: number) => toInside(count, 'atm', 'absolutePressure');

describe('ignition delay', () => {
  test.each([
    [95, 40, 900, 1.913744],
    [100, 40, 900, 2.2786],
    [87, 30, 850, 2.966009],
    [95, 40, 700, 6.394323],
    [95, 40, 800, 3.244104],
    [95, 40, 1000, 1.254628],
  ])('octane %d, %d atm, %d K: %d ms', (octane, pressure, temperature, milliseconds) => {
    const delay = ignitionDelay({ octane, pressure: atmospheres(pressure), temperature });
    expect(Math.abs((delay * 1e3) / milliseconds - 1)).toBeLessThan(5e-7);
  });

  test('the constant in other units of pressure is the same line: 17.68 ms in atm, 18.080 in bar, 18.690 in kgf/cm²', () => {
    const at = (pressure: number) => ignitionDelay({ octane: 100, pressure, temperature: 900 }) * 1e3;
    const constant = (pressure: number) => at(pressure) / Math.exp(3800 / 900);
    expect(constant(atmospheres(1))).toBeCloseTo(17.68, 9);
    expect(constant(1e5)).toBeCloseTo(18.08, 2);
    expect(constant(98_066.5)).toBeCloseTo(18.69, 2);
  });
});

describe('knock integral', () => {
  const pressure = atmospheres(40);
  const trace = (time: number[], temperature: number[]) => ({
    time,
    temperature,
    pressure: time.map(() => pressure),
  });

  test('a state that stays lights after its own delay', () => {
    expect(knockIntegral(trace([0, 1.913744e-3], [900, 900]), 95)).toBeCloseTo(1, 6);
  });

  test('two steps: 1 ms at 800 K is 0.308252 of the way; then at 1,000 K it lights at 1.867887 ms', () => {
    expect(knockIntegral(trace([0, 1e-3], [800, 800]), 95)).toBeCloseTo(0.308252, 6);
    const both = trace([0, 1e-3, 1e-3, 1.867887e-3], [800, 800, 1000, 1000]);
    expect(knockIntegral(both, 95)).toBeCloseTo(1, 6);
  });
});
