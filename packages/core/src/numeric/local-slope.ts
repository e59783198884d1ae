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

/** Slope at each row over `halfWindow` rows to either side, cut off at the ends. */
export function localSlope(x: Float64Array, y: Float64Array, halfWindow: number): Float64Array {
  return y.map((_, row) =>
    slopeOfRows(x, y, Math.max(0, row - halfWindow), Math.min(y.length - 1, row + halfWindow)),
  );
}
