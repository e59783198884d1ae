import { toInside } from '@pullbook/core/quantity';

/** A sweep covers at least this much, r/min, within the speeds of piston engines. Common practice, no source. */
const LEAST_SWEEP_RPM = 500;
const SPEEDS_RPM = [200, 15_000] as const;

/** Whether a column runs through engine speeds as a sweep does: wide, in range, and mostly one way over a stretch. */
export function looksLikeEngineSpeed(
  { values, low, high }: { values: Float64Array; low: number; high: number },
  unit: string,
): boolean {
  const lowRpm = toInside(low, unit, 'engineSpeed');
  const highRpm = toInside(high, unit, 'engineSpeed');
  if (!(lowRpm >= 0) || highRpm > SPEEDS_RPM[1] || highRpm < SPEEDS_RPM[0]) return false;
  if (highRpm - lowRpm < LEAST_SWEEP_RPM) return false;
  return longestWay(values) >= 0.5 * (high - low);
}

/** Whether a column starts near 0 and rises by even steps; whole steps of 1 count rows, not seconds. */
export function looksLikeTime(values: Float64Array): boolean {
  if (values.length < 5) return false;
  const steps: number[] = [];
  for (let row = 1; row < values.length; row++) {
    const step = (values[row] as number) - (values[row - 1] as number);
    if (!(step > 0)) return false;
    steps.push(step);
  }
  const sorted = [...steps].sort((a, b) => a - b);
  const middle = sorted[sorted.length >> 1] as number;
  if (middle === 1 || Math.abs(values[0] as number) > 100 * middle) return false;
  const even = steps.filter((step) => Math.abs(step / middle - 1) < 0.2).length;
  return even >= 0.9 * steps.length;
}

/** Largest rise or fall of a column over a stretch that goes one way but for small steps back. */
function longestWay(values: Float64Array): number {
  let lowest = Number.POSITIVE_INFINITY;
  let highest = Number.NEGATIVE_INFINITY;
  let rise = 0;
  let fall = 0;
  for (const value of values) {
    if (Number.isNaN(value)) continue;
    lowest = Math.min(lowest, value);
    highest = Math.max(highest, value);
    rise = Math.max(rise, value - lowest);
    fall = Math.max(fall, highest - value);
  }
  return wayIsOne(values) ? Math.max(rise, fall) : 0;
}

/** Three steps of four that are not level go the same way. */
function wayIsOne(values: Float64Array): boolean {
  let up = 0;
  let down = 0;
  let before = Number.NaN;
  for (const value of values) {
    if (value > before) up += 1;
    else if (value < before) down += 1;
    if (!Number.isNaN(value)) before = value;
  }
  return Math.max(up, down) >= 0.75 * (up + down);
}
