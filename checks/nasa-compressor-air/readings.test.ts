/**
 * Humidity and density as NASA's own data reduction has them, for 25 readings of a compressor rig that breathes outside air through a plenum:
 * 19 to 71 % relative humidity, 0 to 23 °C, 67 to 91 kPa. Source and selection in PROVENANCE.md. Relative humidity is measured; mole fraction of
 * water and density are computed by NASA from it, plenum pressure and plenum temperature.
 */
import { readFileSync } from 'node:fs';
import { type AirState, airState } from '@pullbook/core/air';
import { absolutePressure, fromInside, temperature, toInside } from '@pullbook/core/quantity';
import { describe, expect, test } from 'vitest';
import { densityCipm2007 } from '../air-density/cipm-2007.ts';

interface Reading {
  test: string;
  reading: string;
  relativeHumidityPercent: number;
  barometerPsia: number;
  plenumPressurePsia: number;
  plenumTemperatureDegR: number;
  waterMoleFraction: number;
  densityLbmPerFt3: number;
}

const READINGS = readReadings();

test('25 readings of two tests', () => {
  expect(READINGS.length).toBe(25);
  expect(new Set(READINGS.map((row) => row.test))).toEqual(new Set(['vaned', 'vaneless']));
});

describe.each(READINGS)('$test $reading', (row) => {
  const air = airOf(row, row.relativeHumidityPercent);
  const density = toInside(row.densityLbmPerFt3, 'lbm/ft³');

  test('mole fraction of water: vapour pressure over plenum pressure', () => {
    // The saturation formulas differ by 1.6e-4 at these temperatures.
    expect(Math.abs(air.vapourPressure / air.pressure / row.waterMoleFraction - 1)).toBeLessThan(3e-4);
  });

  test('density', () => {
    // Theirs is of a real gas: ours is below it by the compressibility, as CIPM-2007 has it.
    const off = air.density / density - 1;
    expect(off).toBeGreaterThan(-5e-4);
    expect(off).toBeLessThan(-2e-4);
    const { compressibility } = densityCipm2007({
      celsius: fromInside(air.temperature, '°C', 'temperature'),
      pascal: air.pressure,
      relativeHumidity: air.relativeHumidity,
    });
    expect(Math.abs(air.density / compressibility / density - 1)).toBeLessThan(5e-5);
  });
});

describe('what would be seen', () => {
  const humid = READINGS.filter((row) => row.waterMoleFraction > 0.015);

  test('humidity left out: density more than 0.5 % off on the humid days', () => {
    expect(humid.length).toBeGreaterThan(5);
    for (const row of humid) {
      const dry = airOf(row, 0);
      expect(dry.density / toInside(row.densityLbmPerFt3, 'lbm/ft³') - 1).toBeGreaterThan(5e-3);
    }
  });

  test('the fraction is of moles, not of mass, and of the plenum, not of the barometer', () => {
    for (const row of READINGS) {
      const air = airOf(row, row.relativeHumidityPercent);
      const massFraction = air.humidityRatio / (1 + air.humidityRatio);
      expect(massFraction / row.waterMoleFraction).toBeLessThan(0.63);
      const ofBarometer = air.vapourPressure / toInside(row.barometerPsia, 'psia');
      expect(ofBarometer / row.waterMoleFraction).toBeLessThan(0.97);
    }
  });
});

function airOf(row: Reading, relativeHumidityPercent: number): AirState {
  const reading = airState({
    pressure: absolutePressure(toInside(row.plenumPressurePsia, 'psia')),
    temperature: temperature(toInside(row.plenumTemperatureDegR, '°R', 'temperature')),
    humidity: { route: 'relativeHumidity', ratio: toInside(relativeHumidityPercent, '%', 'ratio') },
    altitude: null,
  });
  if (!reading.ok) throw new Error(reading.remarks[0]?.message);
  return reading.value;
}

function readReadings(): Reading[] {
  const text = readFileSync(new URL('./readings.csv', import.meta.url), 'utf8');
  const [header = '', ...rows] = text.trim().split('\n');
  const names = header.split(',');
  return rows.map((row) => {
    const cells = row.split(',');
    const named = names.map((name, column) => {
      const cell = cells[column]!;
      return [name, name === 'test' || name === 'reading' ? cell : Number(cell)];
    });
    return Object.fromEntries(named) as Reading;
  });
}
