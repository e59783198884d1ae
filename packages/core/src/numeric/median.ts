/** Middle of the finite values; NaN where there is none. `median([3, 1, NaN, 2])` is 2. */
export function median(values: ArrayLike<number>): number {
  const finite = new Float64Array(values.length);
  let count = 0;
  for (let index = 0; index < values.length; index++) {
    const value = values[index]!;
    if (Number.isFinite(value)) finite[count++] = value;
  }
  return medianInPlace(finite, count);
}

/** Up to here sorting by insertion is several times faster than the general sort: running medians stand on it. */
const SMALL = 100;

/** Median of the first `count` figures of `scratch`, all finite, which it puts in order: running medians reuse one array. */
export function medianInPlace(scratch: Float64Array, count: number): number {
  if (count === 0) return Number.NaN;
  if (count > SMALL) scratch.subarray(0, count).sort();
  else
    for (let index = 1; index < count; index++) {
      const value = scratch[index]!;
      let place = index;
      while (place > 0 && scratch[place - 1]! > value) {
        scratch[place] = scratch[place - 1]!;
        place -= 1;
      }
      scratch[place] = value;
    }
  const upper = scratch[count >> 1]!;
  return count % 2 === 1 ? upper : (scratch[(count >> 1) - 1]! + upper) / 2;
}

/** Carries the median absolute deviation of normal scatter to its standard deviation: 1 / Φ⁻¹(3/4). */
export const DEVIATION_FROM_MAD = 1.4826;

/** Median of the distances from `centre` (the median unless given). */
export function medianAbsoluteDeviation(values: ArrayLike<number>, centre = median(values)): number {
  const distances = new Float64Array(values.length);
  let count = 0;
  for (let index = 0; index < values.length; index++) {
    const distance = Math.abs(values[index]! - centre);
    if (Number.isFinite(distance)) distances[count++] = distance;
  }
  return medianInPlace(distances, count);
}

/** Median in which each value counts by its weight; NaN where no weight is positive. */
export function weightedMedian(values: ArrayLike<number>, weights: ArrayLike<number>): number {
  const order = Array.from({ length: values.length }, (_, index) => index)
    .filter((index) => Number.isFinite(values[index]!) && weights[index]! > 0)
    .sort((a, b) => values[a]! - values[b]!);
  const half = order.reduce((sum, index) => sum + weights[index]!, 0) / 2;
  let reached = 0;
  for (const index of order) {
    reached += weights[index]!;
    if (reached >= half) return values[index]!;
  }
  return Number.NaN;
}

/**
 * Median over `halfWindow` rows to either side. Near the ends the window shrinks evenly on both sides, so that a rising
 * series is not bent there.
 */
export function runningMedian(values: Float64Array, halfWindow: number): Float64Array {
  return values.map((_, row) => {
    const reach = Math.min(halfWindow, row, values.length - 1 - row);
    return median(values.subarray(row - reach, row + reach + 1));
  });
}
