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

/** Median of the first `count` figures of `scratch`, all finite, whose order it changes: running medians reuse one array. */
export function medianInPlace(scratch: Float64Array, count: number): number {
  if (count === 0) return Number.NaN;
  if (count > SMALL) partAbout(scratch, count, count >> 1);
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
  if (count % 2 === 1) return upper;
  let lower = scratch[(count >> 1) - 1]!;
  // Only parted about the middle, the next lower figure stands anywhere before it.
  if (count > SMALL)
    for (let index = 0; index < count >> 1; index++) lower = Math.max(lower, scratch[index]!);
  return (lower + upper) / 2;
}

/**
 * Moves figures so that the one that belongs at `place` stands there, none larger before it and none smaller behind (Hoare's
 * selection, from memory): a long channel need not be sorted for its middle.
 */
function partAbout(figures: Float64Array, count: number, place: number): void {
  let low = 0;
  let high = count - 1;
  while (low < high) {
    const pivot = middleOfThree(figures[low]!, figures[(low + high) >> 1]!, figures[high]!);
    let left = low;
    let right = high;
    while (left <= right) {
      while (figures[left]! < pivot) left += 1;
      while (figures[right]! > pivot) right -= 1;
      if (left > right) break;
      const held = figures[left]!;
      figures[left++] = figures[right]!;
      figures[right--] = held;
    }
    if (place <= right) high = right;
    else if (place >= left) low = left;
    else return;
  }
}

const middleOfThree = (a: number, b: number, c: number): number =>
  Math.max(Math.min(a, b), Math.min(Math.max(a, b), c));

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
  if (values === weights) return selfWeightedMedian(values);
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

/** Values that are their own weights need no order of places: they are sorted as they are, ten times as fast. */
function selfWeightedMedian(values: ArrayLike<number>): number {
  const positive = new Float64Array(values.length);
  let count = 0;
  for (let index = 0; index < values.length; index++) {
    const value = values[index]!;
    if (value > 0 && value < Number.POSITIVE_INFINITY) positive[count++] = value;
  }
  const ascending = positive.subarray(0, count).sort();
  const half = ascending.reduce((sum, value) => sum + value, 0) / 2;
  let reached = 0;
  for (const value of ascending) {
    reached += value;
    if (reached >= half) return value;
  }
  return Number.NaN;
}

/**
 * Median over `halfWindow` rows to either side. Near the ends the window shrinks evenly on both sides, so that a rising
 * series is not bent there.
 */
export function runningMedian(values: Float64Array, halfWindow: number): Float64Array {
  const scratch = new Float64Array(2 * halfWindow + 1);
  return values.map((_, row) => {
    const reach = Math.min(halfWindow, row, values.length - 1 - row);
    let count = 0;
    for (let place = row - reach; place <= row + reach; place++) {
      const value = values[place]!;
      if (Number.isFinite(value)) scratch[count++] = value;
    }
    return medianInPlace(scratch, count);
  });
}
