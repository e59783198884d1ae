import { DEVIATION_FROM_MAD, median, medianAbsoluteDeviation, medianInPlace } from '../numeric/median.ts';

/** A value that stands out of its neighbours. */
export interface FoundSpike {
  row: number;
  value: number;
  expected: number;
}

export interface SpikeOptions {
  /** First and last row looked at, both included; missing: all. */
  fromRow?: number;
  toRow?: number;
}

/** Rows to either side that say what a row should be: a spike of a few rows stands out. */
const LOCAL_ROWS = 7;
/** Rows to either side from which the scatter is taken. */
const SCATTER_ROWS = 50;
const ROBUST_DEVIATIONS = 3;
/**
 * Under this share of the channel's level a deviation is of no account, however quiet the channel is: of 600 good rows in ten
 * channels twenty lie beyond three deviations, and a list of those would hide the one that matters.
 */
const FLOOR_SHARE = 0.02;
/** A quantised channel may stand this many of its own steps off before it can be a spike. */
const FLOOR_STEPS = 1.5;

/**
 * Rows that leave the local straight trend of their neighbours by more than 3 × 1.4826 × the median absolute deviation of
 * such residuals. (Three plain absolute deviations would be two standard deviations and drop 4 % of good rows.)
 * A floor keeps noise-free and quantised channels from being flagged all over.
 *
 * `findSpikes(Float64Array.of(1.1, 0.9, 1.05, 5, 1, 0.95, 1.02))` names row 3, expected about 1.
 */
export function findSpikes(values: Float64Array, options: SpikeOptions = {}): FoundSpike[] {
  const { fromRow = 0, toRow = values.length - 1 } = options;
  const rows: number[] = [];
  for (let row = fromRow; row <= toRow; row++) if (Number.isFinite(values[row]!)) rows.push(row);
  if (rows.length < 5) return [];
  const known = Float64Array.from(rows, (row) => values[row]!);
  const trends = localTrends(known);
  const residuals = known.map((value, index) => value - trends.expected[index]!);
  const floor = floorOf(known);
  const spikes: FoundSpike[] = [];
  let scatter = Number.NaN;
  for (let index = 0; index < known.length; index++) {
    // The scatter changes slowly: taken anew every quarter of its range.
    if (index % (SCATTER_ROWS / 2) === 0) {
      const middle = index + SCATTER_ROWS / 4;
      const near = residuals.subarray(Math.max(0, middle - SCATTER_ROWS), middle + SCATTER_ROWS + 1);
      scatter = DEVIATION_FROM_MAD * medianAbsoluteDeviation(near);
    }
    const expected = trends.expected[index]!;
    const slope = trends.slope[index]!;
    // Less than one row's worth of trend is timing, not a spike: a coarse log bends by that where a sweep begins.
    if (Math.abs(residuals[index]!) > Math.max(ROBUST_DEVIATIONS * scatter, floor, Math.abs(slope)))
      spikes.push({ row: rows[index]!, value: known[index]!, expected });
  }
  return spikes;
}

/**
 * For each row the median of its neighbours after their own slope a row has been taken out. The slope is the median rise
 * over half the window: a few odd rows enter it as often upward as downward and cancel.
 */
function localTrends(values: Float64Array): { expected: Float64Array; slope: Float64Array } {
  const rows = Math.min(values.length, 2 * LOCAL_ROWS + 1);
  const half = Math.floor(rows / 2);
  const scratch = new Float64Array(rows);
  const expected = new Float64Array(values.length);
  const slope = new Float64Array(values.length);
  for (let index = 0; index < values.length; index++) {
    const from = Math.max(0, Math.min(index - LOCAL_ROWS, values.length - rows));
    for (let place = half; place < rows; place++)
      scratch[place - half] = values[from + place]! - values[from + place - half]!;
    const rise = medianInPlace(scratch, rows - half) / half;
    // The row itself has no say: with it in, the residuals of good rows would look narrower than they are.
    let others = 0;
    for (let place = 0; place < rows; place++) {
      const away = from + place - index;
      if (away !== 0) scratch[others++] = values[from + place]! - rise * away;
    }
    slope[index] = rise;
    expected[index] = medianInPlace(scratch, others);
  }
  return { expected, slope };
}

function floorOf(values: Float64Array): number {
  const ascending = values.toSorted();
  let step = Number.POSITIVE_INFINITY;
  for (let index = 1; index < ascending.length; index++) {
    const difference = ascending[index]! - ascending[index - 1]!;
    if (difference > 0 && difference < step) step = difference;
  }
  const levels = new Set(ascending).size;
  const quantised = levels < values.length / 2;
  const level = Math.max(Math.abs(median(values)), (ascending.at(-1)! - ascending[0]!) / 2);
  return Math.max(FLOOR_SHARE * level, quantised ? FLOOR_STEPS * step : 0);
}
