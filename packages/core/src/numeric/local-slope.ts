/** Least-squares slope of y over x in the rows from `fromRow` to `toRow` (both included); NaN where x does not move. */
export function slopeOfRows(
  x: ArrayLike<number>,
  y: ArrayLike<number>,
  fromRow: number,
  toRow: number,
): number {
  let count = 0;
  let meanX = 0;
  let meanY = 0;
  for (let row = fromRow; row <= toRow; row++) {
    if (!Number.isFinite(x[row]!) || !Number.isFinite(y[row]!)) continue;
    count += 1;
    meanX += x[row]!;
    meanY += y[row]!;
  }
  meanX /= count;
  meanY /= count;
  let products = 0;
  let squares = 0;
  for (let row = fromRow; row <= toRow; row++) {
    if (!Number.isFinite(x[row]!) || !Number.isFinite(y[row]!)) continue;
    products += (x[row]! - meanX) * (y[row]! - meanY);
    squares += (x[row]! - meanX) ** 2;
  }
  return products / squares;
}

/** A window of more rows than this is summed by differences of running sums: row by row a dense log takes minutes. */
const WIDEST_DIRECT_ROWS = 64;
/** Running sums start anew after so many rows, so that what is lost to rounding stays far below any reading. */
const ROWS_OF_RUNNING_SUMS = 4096;

/** Slope at each row over `halfWindow` rows to either side, cut off at the ends. */
export function localSlope(x: Float64Array, y: Float64Array, halfWindow: number): Float64Array {
  if (2 * halfWindow + 1 > WIDEST_DIRECT_ROWS) return slopesByRunningSums(x, y, halfWindow);
  return y.map((_, row) =>
    slopeOfRows(x, y, Math.max(0, row - halfWindow), Math.min(y.length - 1, row + halfWindow)),
  );
}

function slopesByRunningSums(x: Float64Array, y: Float64Array, halfWindow: number): Float64Array {
  const slopes = new Float64Array(y.length);
  const reach = ROWS_OF_RUNNING_SUMS + 2 * halfWindow + 2;
  const [counts, sumsX, sumsY, sumsXX, sumsXY] = Array.from({ length: 5 }, () => new Float64Array(reach)) as [
    Float64Array,
    Float64Array,
    Float64Array,
    Float64Array,
    Float64Array,
  ];
  for (let first = 0; first < y.length; first += ROWS_OF_RUNNING_SUMS) {
    const last = Math.min(y.length, first + ROWS_OF_RUNNING_SUMS) - 1;
    const from = Math.max(0, first - halfWindow);
    const to = Math.min(y.length - 1, last + halfWindow);
    const [originX, originY] = [originOf(x, from, to), originOf(y, from, to)];
    for (let row = from; row <= to; row++) {
      const place = row - from;
      const awayX = x[row]! - originX;
      const awayY = y[row]! - originY;
      const counted = Number.isFinite(awayX) && Number.isFinite(awayY);
      counts[place + 1] = counts[place]! + (counted ? 1 : 0);
      sumsX[place + 1] = sumsX[place]! + (counted ? awayX : 0);
      sumsY[place + 1] = sumsY[place]! + (counted ? awayY : 0);
      sumsXX[place + 1] = sumsXX[place]! + (counted ? awayX * awayX : 0);
      sumsXY[place + 1] = sumsXY[place]! + (counted ? awayX * awayY : 0);
    }
    for (let row = first; row <= last; row++) {
      const before = Math.max(0, row - halfWindow) - from;
      const upTo = Math.min(y.length - 1, row + halfWindow) - from + 1;
      const count = counts[upTo]! - counts[before]!;
      const sumX = sumsX[upTo]! - sumsX[before]!;
      const sumY = sumsY[upTo]! - sumsY[before]!;
      const products = sumsXY[upTo]! - sumsXY[before]! - (sumX * sumY) / count;
      const squares = sumsXX[upTo]! - sumsXX[before]! - (sumX * sumX) / count;
      slopes[row] = products / squares;
    }
  }
  return slopes;
}

/** A finite value from the middle of the rows, from which sums are taken; 0 where there is none. */
function originOf(series: Float64Array, fromRow: number, toRow: number): number {
  for (let row = (fromRow + toRow) >> 1; row <= toRow; row++)
    if (Number.isFinite(series[row]!)) return series[row]!;
  return 0;
}
