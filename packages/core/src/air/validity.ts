import { figureOf, fromInside, numberFigure, rangeOf, toInside } from '../quantity/index.ts';
import { type Said, said } from '../remark/index.ts';
import type { AirState } from './model.ts';

/** Rounding of °C to K and back must not put a reading on the edge outside: 1e-6 of any unit. */
const EDGE = 1e-6;

/** Why the inlet temperature lies outside, or nothing. */
export function temperatureOutside(air: AirState, allowed: { lowC: number; highC: number }): Said[] {
  const celsius = fromInside(air.temperature, 'temperature/°C');
  if (isInside(celsius, allowed.lowC, allowed.highC)) return [];
  const [low, high] = [allowed.lowC, allowed.highC].map((limit) => toInside(limit, 'temperature/°C'));
  return [
    said`inlet air at ${figureOf(air.temperature, 'temperature')}; ${rangeOf(low!, high!, 'temperature', ' to ', { decimals: 0 })} allowed`,
  ];
}

/** Why the dry pressure lies outside, or nothing. */
export function dryPressureOutside(air: AirState, allowed: { lowKpa: number; highKpa: number }): Said[] {
  const kilopascal = fromInside(air.dryPressure, 'absolutePressure/kPa');
  if (isInside(kilopascal, allowed.lowKpa, allowed.highKpa)) return [];
  const [low, high] = [allowed.lowKpa, allowed.highKpa].map((limit) => 1000 * limit);
  const reading = figureOf(air.dryPressure, 'absolutePressure', { decimals: 1 });
  return [
    said`dry pressure ${reading}; ${rangeOf(low!, high!, 'absolutePressure', ' to ', { decimals: 1 })} allowed`,
  ];
}

/** Why the factor lies outside, or nothing. */
export function factorOutside(
  factor: number,
  allowed: { low: number; high: number; source: string },
): Said[] {
  if (isInside(factor, allowed.low, allowed.high)) return [];
  return [
    said`factor ${numberFigure(factor, 3)}; ${numberFigure(allowed.low, 2)} to ${numberFigure(allowed.high, 2)} ${allowed.source}`,
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
