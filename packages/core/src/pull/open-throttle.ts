import { extentOf } from '../numeric/extent.ts';
import { runningMedian } from '../numeric/median.ts';
import type { RowRun } from '../numeric/runs.ts';
import { runsOf } from '../numeric/runs.ts';

/** Open means at least this share of the throttle's own plateau, whatever a sensor calls fully open. */
const OPEN_SHARE = 0.95;
/** Single rows of a noisy sensor do not close a throttle. */
const BRIDGED_ROWS = 2;

/**
 * Stretches with the throttle open, judged by the highest figure the channel holds for a few rows (its plateau).
 * Without a throttle channel, or with one that never moves off zero, all rows are one stretch.
 */
export function openThrottleStretches(throttle: Float64Array | null, rowCount: number): RowRun[] {
  const everything = [{ fromRow: 0, toRow: rowCount - 1 }];
  if (throttle === null) return everything;
  const known = runningMedian(throttle, 2);
  const [, plateau] = extentOf(known);
  if (!(plateau > 0)) return everything;
  const open = Array.from(throttle, (value) => Number.isNaN(value) || value >= OPEN_SHARE * plateau);
  return runsOf(open, BRIDGED_ROWS);
}
