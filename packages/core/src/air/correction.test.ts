import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { absolutePressure, temperature } from '../quantity/index.ts';
import { airState } from './air-state.ts';
import { CORRECTIONS, correctionById, correctPower, correctTorque, undoCorrection } from './correction.ts';

const standards = Object.values(CORRECTIONS);

const anyAir = fc
  .record({
    pressure: fc.double({ min: 70_000, max: 108_000, noNaN: true }),
    temperature: fc.double({ min: 263, max: 318, noNaN: true }),
    ratio: fc.double({ min: 0, max: 1, noNaN: true }),
  })
  .map(({ pressure, temperature: kelvin, ratio }) => {
    const reading = airState({
      pressure: absolutePressure(pressure),
      temperature: temperature(kelvin),
      humidity: { route: 'relativeHumidity', ratio },
      altitude: null,
    });
    if (!reading.ok) throw new Error(reading.remarks[0]?.message);
    return reading.value;
  });

test('correct, then undo, in any air and by any standard', () => {
  fc.assert(
    fc.property(
      anyAir,
      fc.constantFrom(...standards),
      fc.double({ min: 1, max: 1e6, noNaN: true }),
      (air, standard, observed) => {
        const factor = standard.factor(air);
        expect(Math.abs(undoCorrection(correctPower(observed, factor), factor) / observed - 1)).toBeLessThan(
          1e-15 * 4,
        );
        expect(correctTorque(observed, factor)).toBe(correctPower(observed, factor));
      },
    ),
    { seed: 5, numRuns: 500 },
  );
});

test('thin air and hot air raise every factor but observed', () => {
  fc.assert(
    fc.property(
      anyAir,
      fc.constantFrom(...standards.filter((standard) => standard.id !== 'observed')),
      (air, standard) => {
        const thinner = {
          ...air,
          pressure: absolutePressure(air.pressure - 1000),
          dryPressure: absolutePressure(air.dryPressure - 1000),
        };
        const hotter = { ...air, temperature: temperature(air.temperature + 5) };
        expect(standard.factor(thinner)).toBeGreaterThan(standard.factor(air));
        expect(standard.factor(hotter)).toBeGreaterThan(standard.factor(air));
      },
    ),
    { seed: 6, numRuns: 300 },
  );
});

describe('the table', () => {
  test.each(standards)('$id has its own id and its sentences', (standard) => {
    expect(CORRECTIONS[standard.id]).toBe(standard);
    for (const sentence of [standard.referenceState, standard.supercharged])
      expect(sentence).toMatch(/^[^ ].*\.$/);
  });

  test('an id from outside', () => {
    expect(correctionById('sae-j607')?.name).toBe('SAE J607');
    expect(correctionById('toString')).toBeNull();
    expect(correctionById('')).toBeNull();
  });
});

test('a factor that cannot be one is a mistake of ours', () => {
  for (const factor of [0, -1, Number.NaN, Number.POSITIVE_INFINITY]) {
    expect(() => correctPower(100, factor)).toThrow('invalid correction factor');
    expect(() => undoCorrection(100, factor)).toThrow('invalid correction factor');
  }
});
