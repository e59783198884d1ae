import { describe, expect, test } from 'vitest';
import { absolutePressure } from '../quantity/index.ts';
import { barometerRemark } from './barometer-check.ts';

const codeAt = (kilopascal: number, altitude: number) =>
  barometerRemark({ pressure: absolutePressure(kilopascal * 1000), altitude })?.code ?? null;

describe('a barometer at an altitude', () => {
  test.each([
    [101.325, 0, null],
    [99.5, 0, null], // weather
    [98.2, 300, null],
    [83.5, 1600, null],
    [101.5, 1600, 'barometer-looks-reduced'], // a weather report's 30 inHg in a cell that has 24.6
    [101.3, 300, 'barometer-looks-reduced'],
    [98.0, 0, 'barometer-off-altitude'],
    [90.0, 1600, 'barometer-off-altitude'],
    [75.0, 1600, 'barometer-off-altitude'],
  ])('%d kPa at %d m: %s', (kilopascal, altitude, code) => expect(codeAt(kilopascal, altitude)).toBe(code));

  test('says what the cell would have', () => {
    const remark = barometerRemark({ pressure: absolutePressure(101_500), altitude: 1600 })!;
    expect(remark.message).toContain('about 83.7 kPa');
    expect(remark.message).toContain('station pressure');
  });
});
