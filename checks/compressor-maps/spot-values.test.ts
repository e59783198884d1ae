/**
 * Single relations of compressors: values worked from the textbook formulas outside this code (they prove the arithmetic). Slip factors: Stanitz's as
 * printed in Gorla & Khan, Turbomachinery, chapter 4; Wiesner's as in a public turbomachinery code. The rise of work to pressure: exact
 * thermodynamics.
 */
import {
  correctedFlow,
  correctedSpeed,
  flowFromCorrected,
  speedFromCorrected,
  stanitzSlip,
  wiesnerSlip,
} from '@pullbook/core/airpath';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

const degrees = (value: number): number => (value * Math.PI) / 180;

describe('corrected flow and speed', () => {
  const inlet = { pressure: 97_000, temperature: 305 };
  const reference = { pressure: 100_000, temperature: 298 };

  test('worked case', () => {
    expect(correctedFlow(0.25, inlet, reference)).toBeCloseTo(0.260741, 6);
    expect(correctedSpeed(60_000, inlet, reference)).toBeCloseTo(59_307.5, 1);
  });

  test('from one reference to another', () => {
    // 545 °R and 28.4 inHg (conventional) to 298 K, 100 kPa, and on to sea level.
    const old = { pressure: 28.4 * 3386.38864, temperature: 545 / 1.8 };
    expect(correctedFlow(1, reference, old)).toBeCloseTo(0.954116, 5);
    expect(correctedFlow(1, reference, { pressure: 101_325, temperature: 288.15 })).toBeCloseTo(1.030423, 5);
  });

  test('there and back', () => {
    const air = fc.record({
      pressure: fc.double({ min: 60_000, max: 110_000, noNaN: true }),
      temperature: fc.double({ min: 250, max: 330, noNaN: true }),
    });
    fc.assert(
      fc.property(air, air, fc.double({ min: 0.01, max: 9, noNaN: true }), (one, other, value) => {
        const flow = flowFromCorrected(correctedFlow(value, one, other), one, other);
        const speed = speedFromCorrected(correctedSpeed(value, one, other), one, other);
        expect(Math.abs(flow / value - 1)).toBeLessThan(1e-14);
        expect(Math.abs(speed / value - 1)).toBeLessThan(1e-14);
      }),
    );
  });
});

describe('slip factors', () => {
  test.each([
    [9, 0.780089],
    [12, 0.835066],
    [17, 0.883576],
    [19, 0.895831],
    [20, 0.90104],
  ])('Stanitz, %i blades', (blades, slip) => {
    expect(stanitzSlip(blades)).toBeCloseTo(slip, 5);
  });

  test.each([
    [12, 0, 0.82438],
    [12, 30, 0.836567],
    [17, 0, 0.862379],
    [20, 0, 0.877177],
    [16, 40, 0.874327],
  ])('Wiesner, %i blades, %i°', (blades, angle, slip) => {
    expect(wiesnerSlip(blades, degrees(angle))).toBeCloseTo(slip, 6);
  });
});
