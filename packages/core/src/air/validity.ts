import { fromInside } from '../quantity/index.ts';
import type { AirState } from './model.ts';

/** Rounding of °C to K and back must not put a reading on the edge outside: 1e-6 of any unit. */
const EDGE = 1e-6;

/** Why the inlet temperature lies outside, or nothing. */
export function temperatureOutside(air: AirState, allowed: { lowC: number; highC: number }): string[] {
  const celsius = fromInside(air.temperature, 'temperature/°C');
  if (isInside(celsius, allowed.lowC, allowed.highC)) return [];
  return [`inlet air at ${celsius.toFixed(1)} °C; ${allowed.lowC} to ${allowed.highC} °C allowed`];
}

/** Why the dry pressure lies outside, or nothing. */
export function dryPressureOutside(air: AirState, allowed: { lowKpa: number; highKpa: number }): string[] {
  const kilopascal = fromInside(air.dryPressure, 'absolutePressure/kPa');
  if (isInside(kilopascal, allowed.lowKpa, allowed.highKpa)) return [];
  return [`dry pressure ${kilopascal.toFixed(1)} kPa; ${allowed.lowKpa} to ${allowed.highKpa} kPa allowed`];
}

/** Why the factor lies outside, or nothing. */
export function factorOutside(
  factor: number,
  allowed: { low: number; high: number; source: string },
): string[] {
  if (isInside(factor, allowed.low, allowed.high)) return [];
  return [
    `factor ${factor.toFixed(3)}; ${allowed.low.toFixed(2)} to ${allowed.high.toFixed(2)} ${allowed.source}`,
  ];
}

/** For standards whose own limits are not known here: where a factor starts to look odd. Common practice, no source. */
export const EVERYDAY_FACTOR = {
  low: 0.9,
  high: 1.09,
  source: 'is usual (common practice; limits of the standard itself are not known here)',
};

function isInside(value: number, low: number, high: number): boolean {
  return value >= low - EDGE && value <= high + EDGE;
}
