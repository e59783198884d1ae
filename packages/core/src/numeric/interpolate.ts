/**
 * Value at `at` on the straight line between the two rows beside it. `x` ascends and has no doubles.
 * NaN outside the rows, and between rows further apart than `widestGap`; a row itself is always given back.
 */
export function interpolateLinear(
  x: ArrayLike<number>,
  y: ArrayLike<number>,
  at: number,
  widestGap = Number.POSITIVE_INFINITY,
): number {
  const upper = firstNotBelow(x, at);
  if (upper === x.length) return Number.NaN;
  if (x[upper] === at) return y[upper]!;
  if (upper === 0) return Number.NaN;
  const gap = x[upper]! - x[upper - 1]!;
  if (!(gap <= widestGap)) return Number.NaN;
  const share = (at - x[upper - 1]!) / gap;
  return y[upper - 1]! * (1 - share) + y[upper]! * share;
}

/** Index of the first element that is at least `at`; the length where there is none. */
export function firstNotBelow(ascending: ArrayLike<number>, at: number): number {
  let low = 0;
  let high = ascending.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (ascending[middle]! < at) low = middle + 1;
    else high = middle;
  }
  return low;
}
