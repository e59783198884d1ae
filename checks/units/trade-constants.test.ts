/**
 * Constants of the trade that follow from definitions alone (foot-pound horsepower, metric horsepower, 2π), worked by hand to ten
 * digits: 33 000/(2π), 60 000/(2π), 60·735.498 75/(2π). Temperature points: ice, boiling and -40 by definition of the scales.
 */
import { fromInside, powerFromTorque, toInside } from '@pullbook/core/quantity';
import { describe, expect, test } from 'vitest';

describe('power from torque and engine speed', () => {
  test.each([
    ['lb-ft', 'hp', 5252.113122],
    ['N·m', 'kW', 9549.296586],
    ['N·m', 'PS', 7023.495702],
  ])('%s × r/min ÷ constant = %s', (torqueUnit, powerUnit, constant) => {
    const atConstantSpeed = fromInside(powerFromTorque(toInside(1, torqueUnit), constant), powerUnit);
    expect(Math.abs(atConstantSpeed - 1)).toBeLessThan(1e-9);
  });

  test('400 lb-ft at 5000 r/min is 380.799 hp', () => {
    expect(fromInside(powerFromTorque(toInside(400, 'lb-ft'), 5000), 'hp')).toBeCloseTo(380.799, 3);
  });
});

test('99 kPa, the dry reference of SAE J1349, is 29.23468 inHg and not 29.92', () => {
  expect(fromInside(99_000, 'inHg', 'absolutePressure')).toBeCloseTo(29.23468, 5);
});

test('bmep of a four-stroke engine: 4π · 12 psi per lb-ft of torque and in³ of displacement', () => {
  const bmep = (4 * Math.PI * toInside(1, 'lb-ft')) / toInside(1, 'in³');
  expect(fromInside(bmep, 'psi', 'pressureDifference')).toBeCloseTo(150.796447, 6);
});

describe('temperature', () => {
  test.each([
    ['°C', 0, 273.15],
    ['°C', 100, 373.15],
    ['°F', 32, 273.15],
    ['°F', 212, 373.15],
    ['°F', -40, 233.15],
    ['°F', 77, 298.15],
    ['°R', 518.67, 288.15],
  ])('%s %d', (unit, value, kelvin) => expect(toInside(value, unit, 'temperature')).toBeCloseTo(kelvin, 10));
});
