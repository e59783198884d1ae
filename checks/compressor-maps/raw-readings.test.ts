/**
 * From raw readings of a NASA compressor rig (PROVENANCE.md) to corrected flow and speed, pressure ratio, efficiency and power, as NASA's own reduction has
 * them. It takes moist air as a real gas of varying heat capacity; ours is an ideal mixture by the NASA polynomials.
 */
import { correctedFlow, correctedSpeed } from '@pullbook/core/airpath';
import {
  compressionPower,
  DRY_AIR,
  gasConstantOf,
  heatRatioOf,
  isentropicEfficiency,
  moistAir,
} from '@pullbook/core/gas';
import { toInside } from '@pullbook/core/quantity';
import { describe, expect, test } from 'vitest';
import { readTable } from './measured-maps.ts';

const REFERENCE = { pressure: toInside(14.696, 'psia'), temperature: 288.15 };
const WATER_OVER_AIR = 18.01528 / 28.9654;

describe.each([
  ['vaned', 92],
  ['vaneless', 50],
] as const)('%s', (file, count) => {
  const readings = readTable(`hecc-${file}.csv`).map((row) => {
    const inletTemperature = toInside(row.inletTemperatureDegR!, '°R', 'temperature');
    const x = row.waterMoleFraction!;
    return {
      row,
      gas: moistAir((WATER_OVER_AIR * x) / (1 - x)),
      inlet: { pressure: toInside(row.inletPressurePsia!, 'psia'), temperature: inletTemperature },
      compression: {
        inletTemperature,
        outletTemperature: toInside(row.outletTemperatureDegR!, '°R', 'temperature'),
        pressureRatio: row.outletPressurePsia! / row.inletPressurePsia!,
      },
    };
  });

  test('all readings are there', () => {
    expect(readings.length).toBe(count);
  });

  test('pressure ratio is that of the readings', () => {
    for (const { row, compression } of readings)
      expect(Math.abs(compression.pressureRatio / row.pressureRatio! - 1)).toBeLessThan(1e-12);
  });

  test('efficiency within 0.0021 with heat capacity over temperature', () => {
    for (const { row, gas, compression } of readings)
      expect(Math.abs(isentropicEfficiency(gas, compression) - row.efficiency!)).toBeLessThan(0.0021);
  });

  test('with a constant ratio of 1.4 it is up to 0.009 above: what the map fit leaves in', () => {
    const off = readings.map(
      ({ row, compression: { pressureRatio, inletTemperature, outletTemperature } }) => {
        const rise = outletTemperature / inletTemperature - 1;
        return (pressureRatio ** (2 / 7) - 1) / rise - row.efficiency!;
      },
    );
    expect(Math.max(...off)).toBeGreaterThan(0.005);
    expect(Math.max(...off)).toBeLessThan(0.013);
  });

  test('power taken up within 0.5 % of flow times their enthalpies', () => {
    for (const { row, gas, compression } of readings) {
      const flow = toInside(row.flowLbmPerS!, 'lb/s', 'massFlow');
      // BTU/lbm (international table) is 2326 J/kg exactly.
      const theirs = flow * 2326 * (row.outletEnthalpyBtuPerLbm! - row.inletEnthalpyBtuPerLbm!);
      expect(Math.abs(compressionPower(gas, flow, compression) / theirs - 1)).toBeLessThan(0.005);
    }
  });

  test('corrected flow and speed within 0.1 % once the gas of the day is put in, within 0.6 % and 0.4 % without', () => {
    for (const { row, gas, inlet } of readings) {
      const flow = correctedFlow(row.flowLbmPerS!, inlet, REFERENCE) / row.correctedFlowLbmPerS!;
      const speed = correctedSpeed(row.speedRpm!, inlet, REFERENCE) / row.correctedSpeedRpm!;
      expect(Math.abs(flow - 1)).toBeLessThan(0.006);
      expect(Math.abs(speed - 1)).toBeLessThan(0.004);
      const constant = Math.sqrt(gasConstantOf(gas) / gasConstantOf(DRY_AIR));
      const ratio = Math.sqrt(1.4 / heatRatioOf(gas, inlet.temperature));
      expect(Math.abs(flow * constant * ratio - 1)).toBeLessThan(0.001);
      expect(Math.abs((speed / constant) * ratio - 1)).toBeLessThan(0.001);
    }
  });
});
