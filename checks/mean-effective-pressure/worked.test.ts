import { toInside } from '@pullbook/core/quantity';
import { meanEffectivePressure } from '@pullbook/core/trial';
import { describe, expect, test } from 'vitest';

/** Four-stroke engines. Both formulas from memory; the trade's constant is also common practice, no source. */
describe('brake mean effective pressure', () => {
  test('Heywood, Internal Combustion Engine Fundamentals, ch. 2.7: mep(kPa) = 6.28 n T(N·m) / V(dm³), n = 2', () => {
    const byHandbook = (6.28 * 2 * 200) / 2;
    expect(meanEffectivePressure(200, 2e-3) / 1000).toBeCloseTo(byHandbook, -1);
    // 6.28 stands for 2π.
    expect(Math.abs(meanEffectivePressure(200, 2e-3) / 1000 / byHandbook - 1)).toBeLessThan(6e-4);
  });

  test('the trade: 150.8 psi for each lb-ft of a cubic inch', () => {
    const pascal = meanEffectivePressure(toInside(400, 'lb-ft', 'torque'), toInside(350, 'in³', 'volume'));
    const psi = pascal / toInside(1, 'psi', 'pressureDifference');
    expect(psi).toBeCloseTo((150.8 * 400) / 350, 1);
  });
});
