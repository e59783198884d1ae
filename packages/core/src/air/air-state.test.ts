import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { absolutePressure, ICE_POINT, temperature } from '../quantity/index.ts';
import { airState } from './air-state.ts';
import type { AirReading, AirState, Humidity } from './model.ts';
import { wetBulbFromVapourPressure } from './wet-bulb.ts';

const READING: AirReading = {
  pressure: absolutePressure(98_200),
  temperature: temperature(30 + ICE_POINT),
  humidity: { route: 'relativeHumidity', ratio: 0.45 },
  altitude: null,
};

function stateOf(change: Partial<AirReading>): AirState {
  const result = airState({ ...READING, ...change });
  if (!result.ok) throw new Error(result.remarks[0]?.message);
  return result.value;
}

function codesOf(change: Partial<AirReading>): string[] {
  return airState({ ...READING, ...change }).remarks.map((remark) => remark.code);
}

function refusalOf(change: Partial<AirReading>) {
  const result = airState({ ...READING, ...change });
  if (result.ok) throw new Error('was accepted');
  return result.remarks[0]!;
}

const wetBulb = (celsius: number): Humidity => ({
  route: 'wetBulb',
  temperature: temperature(celsius + ICE_POINT),
});
const dewPoint = (celsius: number): Humidity => ({
  route: 'dewPoint',
  temperature: temperature(celsius + ICE_POINT),
});

test('parts belong together', () => {
  const air = stateOf({});
  expect(air.dryPressure + air.vapourPressure).toBeCloseTo(air.pressure, 8);
  expect(air.relativeHumidity).toBeCloseTo(0.45, 12);
  expect(airState(READING).remarks).toEqual([]);
});

test('whichever way the moisture is given, it is the same air', () => {
  fc.assert(
    fc.property(
      fc.double({ min: -20, max: 50, noNaN: true }),
      fc.double({ min: 60_000, max: 110_000, noNaN: true }),
      fc.double({ min: 0.05, max: 1, noNaN: true }),
      (celsius, pascal, ratio) => {
        const place = { pressure: absolutePressure(pascal), temperature: temperature(celsius + ICE_POINT) };
        const air = stateOf({ ...place, humidity: { route: 'relativeHumidity', ratio } });
        const bulb = wetBulbFromVapourPressure(air)!;
        const routes: Humidity[] = [
          { route: 'dewPoint', temperature: air.dewPoint! },
          { route: 'vapourPressure', pressure: air.vapourPressure },
        ];
        // In the jump between wet and iced bulb there is no bulb that gives this very air.
        if (Math.abs(bulb - ICE_POINT) > 1e-6) routes.push({ route: 'wetBulb', temperature: bulb });
        for (const humidity of routes) {
          const again = stateOf({ ...place, humidity });
          expect(Math.abs(again.vapourPressure / air.vapourPressure - 1), humidity.route).toBeLessThan(1e-8);
        }
      },
    ),
    { seed: 4, numRuns: 300 },
  );
});

test('moisture lightens the air and raises its density altitude', () => {
  const dry = stateOf({ humidity: { route: 'relativeHumidity', ratio: 0 } });
  const humid = stateOf({ humidity: { route: 'relativeHumidity', ratio: 1 } });
  expect(humid.density).toBeLessThan(dry.density);
  expect(humid.densityAltitude).toBeGreaterThan(dry.densityAltitude);
  expect(dry.dewPoint).toBeNull();
});

describe('odd, computed and flagged', () => {
  test('unknown humidity is taken as dry, and said', () => {
    expect(codesOf({ humidity: null })).toEqual(['humidity-unknown']);
    expect(stateOf({ humidity: null }).vapourPressure).toBe(0);
  });

  test.each<[string, Humidity]>([
    ['relative humidity of 103 %', { route: 'relativeHumidity', ratio: 1.03 }],
    ['dew point above the air', dewPoint(31)],
    ['wet bulb above the air', wetBulb(31)],
    ['vapour pressure', { route: 'vapourPressure', pressure: absolutePressure(4500) }],
  ])('beyond saturation: %s', (_, humidity) => {
    expect(codesOf({ humidity })).toEqual(['supersaturated']);
    expect(stateOf({ humidity }).relativeHumidity).toBeGreaterThan(1);
  });

  test('saturated air is not beyond saturation', () => {
    for (const humidity of [dewPoint(30), wetBulb(30)]) expect(codesOf({ humidity })).toEqual([]);
  });
});

describe('impossible, refused with what is allowed', () => {
  test.each<[string, Partial<AirReading>, string, string]>([
    [
      '98.2 taken as Pa',
      { pressure: absolutePressure(98.2) },
      'barometer-absurd',
      '40.0 kPa (11.81 inHg) to 120.0 kPa',
    ],
    ['no number', { pressure: absolutePressure(Number.NaN) }, 'barometer-absurd', 'reads no number'],
    [
      '30 taken as K',
      { temperature: temperature(30) },
      'air-temperature-absurd',
      '-60.0 °C (-76 °F) to 80.0 °C',
    ],
    ['altitude', { altitude: 30_000 }, 'altitude-absurd', '9000 m'],
    ['45 for 45 %', { humidity: { route: 'relativeHumidity', ratio: 45 } }, 'humidity-absurd', '4500.0 %'],
    [
      'negative humidity',
      { humidity: { route: 'relativeHumidity', ratio: -0.1 } },
      'humidity-absurd',
      '0 % to 100 %',
    ],
    [
      'dew point of 10 K',
      { humidity: { route: 'dewPoint', temperature: temperature(10) } },
      'humidity-absurd',
      '-100 °C',
    ],
    ['wet bulb under that of dry air', { humidity: wetBulb(5) }, 'wet-bulb-too-low', '10.'],
    ['wet bulb of boiling water', { humidity: wetBulb(110) }, 'vapour-above-barometer', '98.2 kPa'],
    [
      'vapour at the barometer',
      { humidity: { route: 'vapourPressure', pressure: READING.pressure } },
      'vapour-above-barometer',
      '98.2 kPa',
    ],
    [
      'negative vapour',
      { humidity: { route: 'vapourPressure', pressure: absolutePressure(-1) } },
      'humidity-absurd',
      '0 kPa',
    ],
  ])('%s', (_, change, code, said) => {
    const refusal = refusalOf(change);
    expect(refusal.code).toBe(code);
    expect(refusal.message).toContain(said);
    expect(refusal.message).not.toContain('NaN');
  });
});
