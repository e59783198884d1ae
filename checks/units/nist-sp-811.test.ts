/**
 * Source: NIST Special Publication 811 (2008), appendix B.8 and B.9, printed to seven digits. Values from memory of that table;
 * psi, inHg and inH2O conventional also seen in public copies of it. Exact values follow from the definitions of inch, pound and
 * standard gravity. Tolerance: half of the last printed digit.
 */
import { type QuantityKind, toInside } from '@pullbook/core/quantity';
import { describe, expect, test } from 'vitest';

describe('printed to seven digits', () => {
  test.each<[string, QuantityKind, number]>([
    ['hp', 'power', 7.456999e2],
    ['PS', 'power', 7.354988e2],
    ['hp (electric)', 'power', 7.46e2],
    ['lbf·ft', 'torque', 1.355818],
    ['lbf·in', 'torque', 1.129848e-1],
    ['kgf·m', 'torque', 9.80665],
    ['psi', 'gaugePressure', 6.894757e3],
    ['inHg', 'absolutePressure', 3.386389e3],
    ['inHg (32 °F)', 'absolutePressure', 3.38638e3],
    ['inHg (60 °F)', 'absolutePressure', 3.37685e3],
    ['inH2O', 'pressureDifference', 2.490889e2],
    ['inH2O (39.2 °F)', 'pressureDifference', 2.49082e2],
    ['inH2O (60 °F)', 'pressureDifference', 2.4884e2],
    ['mmHg', 'absolutePressure', 1.333224e2],
    ['torr', 'absolutePressure', 1.333224e2],
    ['atm', 'absolutePressure', 1.01325e5],
    ['lb/min', 'massFlow', 7.559873e-3],
    ['lb/h', 'massFlow', 1.259979e-4],
    ['cfm', 'volumeFlow', 4.719474e-4],
    ['gal/min', 'volumeFlow', 6.30902e-5],
    ['in³', 'volume', 1.638706e-5],
    ['ft³', 'volume', 2.831685e-2],
    ['gal', 'volume', 3.785412e-3],
    ['UK gal', 'volume', 4.54609e-3],
    ['oz', 'mass', 2.834952e-2],
    ['lb/ft³', 'density', 1.601846e1],
    ['lb/(hp·h)', 'specificConsumption', 1.689659e-7],
    ['mph', 'speed', 4.4704e-1],
    ['ft/min', 'speed', 5.08e-3],
    ['slug·ft²', 'momentOfInertia', 1.355818],
    ['lb·ft²', 'momentOfInertia', 4.214011e-2],
    ['lbf/in', 'springRate', 1.751268e2],
    ['lbf', 'force', 4.448222],
  ])('%s', (spelling, kind, printed) => {
    const lastDigit = 10 ** (Math.floor(Math.log10(printed)) - 6);
    const off = Math.abs(toInside(1, spelling, kind) - printed);
    expect(off).toBeLessThanOrEqual(0.5000001 * lastDigit);
  });
});

describe('exact by definition', () => {
  test.each<[string, QuantityKind, number]>([
    ['hp', 'power', 745.69987158227],
    ['lb-ft', 'torque', 1.3558179483314],
    ['psi', 'absolutePressure', 6894.757293168],
    ['inHg', 'absolutePressure', 3386.38864034],
    ['inH2O', 'pressureDifference', 249.08891],
    ['in³', 'volume', 16.387064e-6],
    ['gal', 'volume', 3.785411784e-3],
  ])('%s', (spelling, kind, exact) => {
    expect(Math.abs(toInside(1, spelling, kind) / exact - 1)).toBeLessThan(1e-12);
  });

  test('lb/(hp·h) in g/(kW·h)', () => {
    const gramPerKilowattHour = toInside(1, 'lb/(hp·h)') / toInside(1, 'g/(kW·h)');
    expect(gramPerKilowattHour).toBeCloseTo(608.277388, 6);
  });
});

test('inches of mercury at 32 °F and 60 °F differ by 0.28 %: a barometer must say which', () => {
  const ratio =
    toInside(1, 'inHg (32 °F)', 'absolutePressure') / toInside(1, 'inHg (60 °F)', 'absolutePressure');
  expect(ratio - 1).toBeCloseTo(0.0028, 4);
});
