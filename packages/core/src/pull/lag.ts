import { interpolateLinear } from '../numeric/interpolate.ts';

/**
 * A channel put back to where it belongs: what was written at time t + lag happened at t. Between rows by a straight line;
 * rows whose value lies off the end become NaN. `time` ascends, s.
 */
export function withoutLag(values: Float64Array, time: Float64Array, lagS: number): Float64Array {
  if (lagS === 0) return values;
  return values.map((_, row) => interpolateLinear(time, values, time[row]! + lagS));
}

/** Time that can be relied on: every row has one and it always moves on. */
export function usableTime(time: Float64Array | undefined): Float64Array | null {
  if (time === undefined || time.length < 2) return null;
  const ascending = time.every(
    (value, row) => Number.isFinite(value) && (row === 0 || value > time[row - 1]!),
  );
  return ascending ? time : null;
}
