import { extentOf } from '../numeric/extent.ts';
import { localSlope, slopeOfRows } from '../numeric/local-slope.ts';
import { DEVIATION_FROM_MAD, median, weightedMedian } from '../numeric/median.ts';
import { maskOf, type RowRun, runsOf } from '../numeric/runs.ts';
import type { AcceptanceWindow } from './model.ts';

/** A stretch in which the speed moves in one direction at about one rate. */
export interface SweepRun extends RowRun {
  direction: AcceptanceWindow['direction'];
  /** Median rate, r/min per unit of the clock, always positive. */
  rate: number;
}

/** What the sweep is looked for in. The clock is time in s, or the row number where there is no time. */
export interface SweepTrace {
  /** Without single odd readings. */
  speedRpm: Float64Array;
  clock: Float64Array;
  clockIsTime: boolean;
  /** Any unit; tells a driven sweep from coasting. `null`: none. */
  torque: Float64Array | null;
}

/** A row belongs to the sweep while its rate is at least this share of the sweep's median rate, or at most its inverse. */
const SLOWEST_SHARE = 0.4;
const SMALLEST_SPAN_RPM = 200;
const FEWEST_ROWS = 5;
const SLOPE_HALF_WINDOW_S = 0.25;
const SLOPE_HALF_WINDOW_ROWS = 5;

/**
 * The sweep within `stretches`: of all runs in one direction the one with the most work in it (torque times time), so
 * that coasting down after the lift, which crosses the same speeds, is not taken for the pull. `null`: none.
 */
export function findSweep(trace: SweepTrace, stretches: readonly RowRun[]): SweepRun | null {
  let best: SweepRun | null = null;
  let most = 0;
  for (const stretch of stretches)
    for (const run of runsIn(trace, stretch)) {
      const work = workOf(trace, run);
      if (work > most) [best, most] = [run, work];
    }
  return best;
}

/** Rows to either side over which a slope is taken. */
export function slopeHalfWindow(trace: SweepTrace): number {
  if (!trace.clockIsTime) return SLOPE_HALF_WINDOW_ROWS;
  const step = median(trace.clock.subarray(1).map((value, row) => value - trace.clock[row]!));
  return Math.max(2, Math.round(SLOPE_HALF_WINDOW_S / step));
}

function runsIn(trace: SweepTrace, stretch: RowRun): SweepRun[] {
  const { fromRow, toRow } = stretch;
  if (toRow - fromRow + 1 < FEWEST_ROWS) return [];
  const speed = trace.speedRpm.subarray(fromRow, toRow + 1);
  const clock = trace.clock.subarray(fromRow, toRow + 1);
  const reach = slopeHalfWindow(trace);
  const rates = localSlope(clock, speed, reach);
  const found: SweepRun[] = [];
  for (const sign of [1, -1]) {
    const along = rates.map((rate) => sign * rate);
    // Each row weighs by the speed it crosses: idling for minutes must not set the rate.
    const typical = weightedMedian(along, along);
    for (const first of runsOf(maskOf(along, inBand(typical)), reach)) {
      const rate = median(along.subarray(first.fromRow, first.toRow + 1));
      const mask = maskOf(along, inBand(rate));
      for (const run of runsOf(mask, reach)) {
        if (run.toRow < first.fromRow || run.fromRow > first.toRow) continue;
        const ends = sharpEnds(run, speed, clock, sign, rate, reach);
        const span = Math.abs(speed[ends.toRow]! - speed[ends.fromRow]!);
        if (ends.toRow - ends.fromRow + 1 < FEWEST_ROWS || span < SMALLEST_SPAN_RPM) continue;
        found.push({
          fromRow: fromRow + ends.fromRow,
          toRow: fromRow + ends.toRow,
          direction: sign === 1 ? 'rising' : 'falling',
          rate,
        });
      }
    }
  }
  return found;
}

const inBand = (rate: number) => (value: number) =>
  value >= SLOWEST_SHARE * rate && value <= rate / SLOWEST_SHARE;

/**
 * A slope over rows on both sides is blunt at a turn of the speed, which would cost the last rows of the pull: the ends
 * are carried on with slopes from the run's side only, then set on the turning row itself.
 */
function sharpEnds(
  run: RowRun,
  speed: Float64Array,
  clock: Float64Array,
  sign: number,
  rate: number,
  reach: number,
): RowRun {
  let { fromRow, toRow } = run;
  const within = inBand(rate);
  for (let step = 0; step < 2 * reach && toRow + 1 < speed.length; step++) {
    if (!within(sign * slopeOfRows(clock, speed, toRow + 1 - reach, toRow + 1))) break;
    toRow += 1;
  }
  for (let step = 0; step < 2 * reach && fromRow > 0; step++) {
    if (!within(sign * slopeOfRows(clock, speed, fromRow - 1, fromRow - 1 + reach))) break;
    fromRow -= 1;
  }
  const noise = noiseOf(speed.subarray(fromRow, toRow + 1));
  const [, highest] = extentOf(
    speed.subarray(Math.max(fromRow, toRow - 2 * reach), toRow + 1).map((value) => sign * value),
  );
  while (toRow > fromRow && !(sign * speed[toRow]! >= highest - noise)) toRow -= 1;
  const [lowest] = extentOf(
    speed.subarray(fromRow, Math.min(toRow, fromRow + 2 * reach) + 1).map((value) => sign * value),
  );
  while (fromRow < toRow && !(sign * speed[fromRow]! <= lowest + noise)) fromRow += 1;
  return { fromRow, toRow };
}

/** Three standard deviations of a series' jitter, from its second differences, which no even slope changes. */
function noiseOf(series: Float64Array): number {
  const bends = series.subarray(2).map((value, row) => Math.abs(value - 2 * series[row + 1]! + series[row]!));
  return (3 * DEVIATION_FROM_MAD * median(bends)) / Math.sqrt(6);
}

function workOf(trace: SweepTrace, run: SweepRun): number {
  let work = 0;
  for (let row = run.fromRow + 1; row <= run.toRow; row++) {
    const torque = trace.torque === null ? 1 : trace.torque[row]!;
    if (torque > 0) work += torque * (trace.clock[row]! - trace.clock[row - 1]!);
  }
  return work;
}
