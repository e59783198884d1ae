import { extentOf } from '../numeric/extent.ts';
import { median } from '../numeric/median.ts';
import type { GriddedCurve } from './model.ts';

/** Rows closer than this are a logger's samples. A little under the 50 r/min of the finest printed tables. */
const CLOSEST_POINTS_RPM = 45;
/** A step is settled and averaged for at least a second before it is written down (design of step tests, common practice). */
const SHORTEST_SETTLED_STEP_S = 1;
/** Speeds of a printed table are whole multiples of this. */
const TABLE_STEP_RPM = 50;

/**
 * Whether rows are a logger's samples or settled means that stay where they are. Rows far apart are points when there is
 * no time, when each took a second or more, or when their speeds are a table's round numbers.
 */
export function kindOfRows(speedRpm: Float64Array, time: Float64Array | null): GriddedCurve['kindOfRows'] {
  const speeds = speedRpm.every(Number.isFinite) ? speedRpm : speedRpm.filter(Number.isFinite);
  if (speeds.length < 2 || areTooMany(speeds) || medianSpacingRpm(speeds) < CLOSEST_POINTS_RPM)
    return 'samples';
  if (time === null) return 'points';
  const step = median(time.subarray(1).map((value, row) => value - time[row]!));
  if (step >= SHORTEST_SETTLED_STEP_S) return 'points';
  const round = speeds.filter(
    (speed) => Math.abs(speed - TABLE_STEP_RPM * Math.round(speed / TABLE_STEP_RPM)) <= 3,
  );
  return round.length >= 0.75 * speeds.length ? 'points' : 'samples';
}

/** More rows than could lie so far apart: a dense log need not be put in order to be told. */
function areTooMany(speeds: Float64Array): boolean {
  const [low, high] = extentOf(speeds);
  // Of so many distances about half are at least the median.
  return (speeds.length / 2 - 2) * CLOSEST_POINTS_RPM > high - low;
}

/** Median distance of neighbouring speeds once they are put in order, r/min. */
export function medianSpacingRpm(speedRpm: Float64Array): number {
  const ascending = speedRpm.filter(Number.isFinite).sort();
  return median(ascending.subarray(1).map((speed, index) => speed - ascending[index]!));
}
