import {
  compressionRatioFromVolumes,
  deriveFigures,
  displacement,
  meanPistonSpeed,
  readSheet,
} from '@pullbook/core/combination';
import { fromInside, toInside } from '@pullbook/core/quantity';
import { describe, expect, test } from 'vitest';

describe('spot values of displacement and mean piston speed, by hand from the formula', () => {
  test.each([
    ['8 × 4.00 × 3.48 in', 8, toInside(4, 'length/in'), toInside(3.48, 'length/in'), 'volume/in³', 349.8478],
    ['4 × 86 × 86 mm', 4, 0.086, 0.086, 'volume/cm³', 1998.2289],
  ])('displacement n π/4 B² S: %s', (_, cylinders, bore, stroke, unit, expected) => {
    const value = fromInside(displacement(cylinders, bore, stroke), unit);
    expect(Math.abs(value / expected - 1)).toBeLessThan(1e-6);
  });

  test('mean piston speed 2 S N: 86 mm at 5500 r/min is 15.7667 m/s', () => {
    expect(Math.abs(meanPistonSpeed(0.086, 5500) / 15.7667 - 1)).toBeLessThan(3e-6);
  });

  test('mean piston speed S × r/min / 6: 3.48 in at 6000 r/min is 3480 ft/min', () => {
    expect(fromInside(meanPistonSpeed(toInside(3.48, 'length/in'), 6000), 'speed/ft/min')).toBeCloseTo(
      3480,
      9,
    );
  });
});

describe('H. N. Gupta, "Fundamentals of Internal Combustion Engines", example 16.1, page 519', () => {
  // 3.0 L V6, bore = stroke, 3000 r/min, compression ratio 9. Printed: bore 8.60 cm, mean piston speed 8.6 m/s,
  // clearance volume 62.5 cm³. Printed to three figures.
  const boreAsPrinted = '8.60 cm';
  const block = { cylinders: 6, bore: boreAsPrinted, stroke: boreAsPrinted, compressionRatio: 9 };
  const read = readSheet({ schemaVersion: 1, name: 'square six', shortBlock: block });
  if (!read.ok) throw new Error(read.remarks[0]!.message);
  const figure = (id: string) => deriveFigures(read.value, 3000).find((item) => item.id === id)!.value!;

  test('displacement 3.0 L, mean piston speed 8.6 m/s', () => {
    expect(fromInside(figure('displacement'), 'volume/L')).toBeCloseTo(3.0, 2);
    expect(figure('meanPistonSpeed')).toBeCloseTo(8.6, 2);
    expect(figure('boreToStroke')).toBe(1);
  });

  test('the printed clearance volume of 62.5 cm³ gives the compression ratio back', () => {
    const swept = 3.0e-3 / 6;
    const ratio = compressionRatioFromVolumes({ swept, chamber: 62.5e-6, gasket: 0, deck: 0, dish: 0 });
    expect(ratio).toBeCloseTo(9, 9);
    expect(
      compressionRatioFromVolumes({ swept, chamber: 40e-6, gasket: 12.5e-6, deck: 5e-6, dish: 5e-6 }),
    ).toBeCloseTo(9, 9);
  });
});
