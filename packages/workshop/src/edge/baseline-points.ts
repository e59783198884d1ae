import type { Baseline } from '@pullbook/core/airpath';
import { edgeNumber } from './number.ts';

/** What an engine does without its supercharger at one engine speed, as observed; the ends where its band is known by itself. */
export interface BaselinePoint {
  engineSpeedRpm: number;
  brakePowerKw: number | null;
  brakePowerKwLow?: number | null;
  brakePowerKwHigh?: number | null;
  airFlowKgPerS: number | null;
  frictionPowerKw: number | null;
  manifoldPressureKpa: number | null;
  manifoldTemperatureC: number | null;
}

/** A baseline as it leaves the program; `power`: the 95 % band of a scaled one, W. */
export function baselinePoints(
  of: Baseline,
  power: { low: readonly number[]; high: readonly number[] } | null = null,
): BaselinePoint[] {
  const kilo = (value: number | undefined) => edgeNumber(value === undefined ? value : value / 1000);
  return of.engineSpeedRpm.map((engineSpeedRpm, node) => ({
    engineSpeedRpm,
    brakePowerKw: kilo(of.brakePower[node]),
    ...(power && { brakePowerKwLow: kilo(power.low[node]), brakePowerKwHigh: kilo(power.high[node]) }),
    airFlowKgPerS: edgeNumber(of.airFlow[node]),
    frictionPowerKw: kilo(of.frictionPower[node]),
    manifoldPressureKpa: kilo(of.manifoldPressure[node]),
    manifoldTemperatureC: edgeNumber((of.manifoldTemperature[node] ?? Number.NaN) - 273.15),
  }));
}
