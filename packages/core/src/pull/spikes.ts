import { extentOf } from '../numeric/extent.ts';
import { DEVIATION_FROM_MAD, medianAbsoluteDeviation, medianInPlace } from '../numeric/median.ts';

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
  const { rows, known } = finiteRows(values, fromRow, toRow);
  if (known.length < 5) return [];
  // Sorting a long channel for its floor is dear, and most channels hold nothing that passes even the lowest it can have.
  if (restlessBlocks(known, lowestFloor(known)).length === 0) return [];
  const floor = floorOf(known);
  const trends = new LocalTrends(known);
  const spikes: FoundSpike[] = [];
  let scatter = Number.NaN;
  let scatterFrom = -1;
  for (const block of restlessBlocks(known, floor))
    for (let index = block; index < Math.min(block + ROWS_OF_A_BLOCK, known.length); index++) {
      const { expected, slope } = trends.at(index);
      const residual = Math.abs(known[index]! - expected);
      // Less than one row's worth of trend is timing, not a spike: a coarse log bends by that where a sweep begins.
      if (!(residual > Math.max(floor, Math.abs(slope)))) continue;
      // The scatter changes slowly: taken anew every quarter of its range.
      const from = index - (index % (SCATTER_ROWS / 2));
      if (from !== scatterFrom)
        [scatter, scatterFrom] = [scatterAbout(from + SCATTER_ROWS / 4, trends), from];
      if (residual > ROBUST_DEVIATIONS * scatter)
        spikes.push({ row: rows === null ? fromRow + index : rows[index]!, value: known[index]!, expected });
    }
  return spikes;
}

/** The finite values of a stretch and their rows; `rows` is `null` where every row has one. */
function finiteRows(
  values: Float64Array,
  fromRow: number,
  toRow: number,
): { rows: Int32Array | null; known: Float64Array } {
  const stretch = values.subarray(fromRow, toRow + 1);
  if (stretch.every(Number.isFinite)) return { rows: null, known: stretch };
  const rows = new Int32Array(stretch.length);
  let count = 0;
  for (let row = fromRow; row <= toRow; row++) if (Number.isFinite(values[row]!)) rows[count++] = row;
  const kept = rows.subarray(0, count);
  return { rows: kept, known: new Float64Array(count).map((_, index) => values[kept[index]!]!) };
}

/** Rows looked over together. */
const ROWS_OF_A_BLOCK = 16;
/**
 * How far a row can be from what its neighbours say, in ranges (highest less lowest) of all rows they and it are taken from:
 * the slope is at most a range over half a window, carried at most a whole window, and the row lies in the range itself.
 */
const FURTHEST_IN_RANGES = 3.5;

/** First rows of the blocks in which a row can be further from its neighbours than `floor`. */
function restlessBlocks(values: Float64Array, floor: number): number[] {
  const blocks: number[] = [];
  for (let block = 0; block < values.length; block += ROWS_OF_A_BLOCK) {
    const from = Math.max(0, block - 2 * LOCAL_ROWS);
    const to = Math.min(values.length, block + ROWS_OF_A_BLOCK + 2 * LOCAL_ROWS);
    let low = values[from]!;
    let high = low;
    for (let index = from + 1; index < to; index++) {
      const value = values[index]!;
      if (value < low) low = value;
      else if (value > high) high = value;
    }
    if (!(FURTHEST_IN_RANGES * (high - low) <= floor)) blocks.push(block);
  }
  return blocks;
}

function scatterAbout(middle: number, trends: LocalTrends): number {
  const from = Math.max(0, Math.floor(middle - SCATTER_ROWS));
  const to = Math.min(trends.values.length, Math.floor(middle + SCATTER_ROWS + 1));
  const residuals = new Float64Array(to - from).map(
    (_, place) => trends.values[from + place]! - trends.at(from + place).expected,
  );
  return DEVIATION_FROM_MAD * medianAbsoluteDeviation(residuals);
}

/**
 * What the neighbours of a row say it should be: their median after their own slope a row has been taken out. The slope is
 * the median rise over half the window: a few odd rows enter it as often upward as downward and cancel.
 */
class LocalTrends {
  readonly values: Float64Array;
  private readonly rows: number;
  private readonly scratch: Float64Array;

  constructor(values: Float64Array) {
    this.values = values;
    this.rows = Math.min(values.length, 2 * LOCAL_ROWS + 1);
    this.scratch = new Float64Array(this.rows);
  }

  at(index: number): { expected: number; slope: number } {
    const { values, rows, scratch } = this;
    const half = Math.floor(rows / 2);
    const from = Math.max(0, Math.min(index - LOCAL_ROWS, values.length - rows));
    for (let place = half; place < rows; place++)
      scratch[place - half] = values[from + place]! - values[from + place - half]!;
    const slope = medianInPlace(scratch, rows - half) / half;
    // The row itself has no say: with it in, the residuals of good rows would look narrower than they are.
    let others = 0;
    for (let place = 0; place < rows; place++) {
      const away = from + place - index;
      if (away !== 0) scratch[others++] = values[from + place]! - slope * away;
    }
    return { expected: medianInPlace(scratch, others), slope };
  }
}

/** What `floorOf` gives at least: the level of values that all have one sign is at least that of the nearest to 0. */
function lowestFloor(values: Float64Array): number {
  const [low, high] = extentOf(values);
  return FLOOR_SHARE * Math.max(low, -high, (high - low) / 2);
}

function floorOf(values: Float64Array): number {
  const ascending = values.toSorted();
  let step = Number.POSITIVE_INFINITY;
  let levels = 1;
  for (let index = 1; index < ascending.length; index++) {
    const difference = ascending[index]! - ascending[index - 1]!;
    if (difference === 0) continue;
    levels += 1;
    if (difference < step) step = difference;
  }
  const quantised = levels < values.length / 2;
  const level = Math.max(Math.abs(medianOfAscending(ascending)), (ascending.at(-1)! - ascending[0]!) / 2);
  return Math.max(FLOOR_SHARE * level, quantised ? FLOOR_STEPS * step : 0);
}

function medianOfAscending(ascending: Float64Array): number {
  const upper = ascending[ascending.length >> 1]!;
  return ascending.length % 2 === 1 ? upper : (ascending[(ascending.length >> 1) - 1]! + upper) / 2;
}
