import { median } from '../numeric/median.ts';
import type { RowRun } from '../numeric/runs.ts';

/** A speed that was held. */
export interface Hold extends RowRun {
  /** First row of its settled part, which ends at `toRow`. */
  settledFrom: number;
  /** Middle speed, r/min */
  speedRpm: number;
}

/** A point is taken when speed keeps within this of its target (common practice of step tests, no source), r/min. */
export const HELD_WITHIN_RPM = 20;
/** … for at least this long, s; what follows is settled. A shorter hold gives its second half. */
const HELD_FOR_S = 1;
/** Speeds of a step test lie further apart than this; a slow sweep cut at the band does not. r/min */
const LEAST_STEP_RPM = 100;
/** Fewer speeds are a warm-up, a tuning stop, or the two ends of a sweep. */
const FEWEST_SPEEDS = 4;
/** A sweep with stops on its way holds for less than this share of its time. */
const LEAST_SHARE_HELD = 0.5;
/** Less than this share of the middling hold's torque is not under load. */
const LOADED_SHARE = 0.25;

/**
 * The held speeds of a log that goes up (or down) in steps: hold, step, hold. `null` where it is none: fewer than four
 * speeds, steps of less than 100 r/min, or most of the time on the way. Holds without load do not count.
 *
 * @param speedRpm  without single odd readings
 * @param time      s, rising
 */
export function findStaircase(
  speedRpm: Float64Array,
  time: Float64Array,
  torque: Float64Array | null,
): Hold[] | null {
  const holds = underLoad(heldStretches(speedRpm, time), torque);
  const [first, last] = [holds[0], holds.at(-1)];
  if (!first || !last || distinctSpeeds(holds) < FEWEST_SPEEDS) return null;
  const steps = holds.slice(1).map((hold, at) => Math.abs(hold.speedRpm - holds[at]!.speedRpm));
  if (steps.some((step) => step < LEAST_STEP_RPM)) return null;
  const held = holds.reduce((sum, hold) => sum + time[hold.toRow]! - time[hold.fromRow]!, 0);
  return held >= LEAST_SHARE_HELD * (time[last.toRow]! - time[first.fromRow]!) ? holds : null;
}

function heldStretches(speedRpm: Float64Array, time: Float64Array): Hold[] {
  const holds: Hold[] = [];
  let row = 0;
  while (row < speedRpm.length) {
    const end = lastWithin(speedRpm, row, 2 * HELD_WITHIN_RPM);
    const hold = time[end]! - time[row]! >= HELD_FOR_S ? aboutItsMiddle(speedRpm, time, row, end) : null;
    if (hold) holds.push(hold);
    row = hold ? hold.toRow + 1 : row + 1;
  }
  return holds;
}

/** Last row up to which speeds from `from` on lie within a width of each other. */
function lastWithin(speedRpm: Float64Array, from: number, widthRpm: number): number {
  let [low, high, last] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, from];
  for (let row = from; row < speedRpm.length; row++) {
    const speed = speedRpm[row]!;
    if (Number.isNaN(speed)) continue;
    low = Math.min(low, speed);
    high = Math.max(high, speed);
    if (high - low > widthRpm) break;
    last = row;
  }
  return last;
}

/** The stretch without the rows at its ends that are still coming or already leaving; `null` where too little is left. */
function aboutItsMiddle(speedRpm: Float64Array, time: Float64Array, from: number, to: number): Hold | null {
  const middle = median(speedRpm.subarray(from, to + 1));
  const isHeld = (row: number) => Math.abs(speedRpm[row]! - middle) <= HELD_WITHIN_RPM;
  let [fromRow, toRow] = [from, to];
  while (fromRow < toRow && !isHeld(fromRow)) fromRow += 1;
  while (toRow > fromRow && !isHeld(toRow)) toRow -= 1;
  const held = time[toRow]! - time[fromRow]!;
  if (held < HELD_FOR_S) return null;
  const settledAt = time[fromRow]! + Math.min(HELD_FOR_S, held / 2);
  let settledFrom = fromRow;
  while (settledFrom < toRow && time[settledFrom]! < settledAt) settledFrom += 1;
  return { fromRow, toRow, settledFrom, speedRpm: middle };
}

function underLoad(holds: readonly Hold[], torque: Float64Array | null): Hold[] {
  if (torque === null) return [...holds];
  const loads = holds.map(({ settledFrom, toRow }) => median(torque.subarray(settledFrom, toRow + 1)));
  const enough = LOADED_SHARE * median(loads);
  return holds.filter((_, at) => loads[at]! > enough);
}

function distinctSpeeds(holds: readonly Hold[]): number {
  const ascending = holds.map((hold) => hold.speedRpm).sort((a, b) => a - b);
  return ascending.filter((speed, at) => at === 0 || speed - ascending[at - 1]! >= LEAST_STEP_RPM).length;
}
