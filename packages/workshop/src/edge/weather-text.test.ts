import { describe, expect, test } from 'vitest';
import { weatherFromText } from './weather-text.ts';

const read = (humidity?: string) => {
  const result = weatherFromText({ pressure: '98.2 kPa', temperature: '30 C', humidity });
  return result.ok ? result.value.humidity : result.remarks[0]!;
};

describe('weatherFromText', () => {
  test('brings pressure and temperature to inside units', () => {
    const result = weatherFromText({ pressure: '982 mbar', temperature: '86 F', altitude: '1000 ft' });
    expect(result.ok && result.value.pressure).toBeCloseTo(98_200, 6);
    expect(result.ok && result.value.temperature).toBeCloseTo(303.15, 9);
    expect(result.ok && result.value.altitude).toBeCloseTo(304.8, 9);
  });

  test.each([
    ['45%', 'relativeHumidity'],
    ['45 % relative', 'relativeHumidity'],
    ['12 C dew point', 'dewPoint'],
    ['20 C wet bulb', 'wetBulb'],
    ['1.2 kPa vapour', 'vapourPressure'],
    ['12 mbar vapor pressure', 'vapourPressure'],
  ])('"%s" is %s', (text, route) => expect(read(text)).toMatchObject({ route }));

  test.each([undefined, '', 'unknown', '-'])('%j is unknown, which is legal', (text) => {
    expect(read(text)).toBeNull();
  });

  test.each(['45', '12 C', 'damp'])('"%s" is refused with what is accepted', (text) => {
    expect(read(text)).toMatchObject({ level: 'refusal', message: expect.stringContaining('dew point') });
  });

  test('every field that cannot be read has its own remark', () => {
    const result = weatherFromText({
      pressure: '98.2',
      temperature: '30 kg',
      humidity: 'damp',
      altitude: 'high',
    });
    expect(result.ok).toBe(false);
    expect(result.remarks.map((one) => one.message.split(/[: ]/)[0])).toEqual([
      'Air',
      'Air',
      'Humidity',
      'Altitude',
    ]);
  });
});
