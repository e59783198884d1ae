/** Lowest and highest finite value; `[NaN, NaN]` where there is none. */
export function extentOf(values: Iterable<number>): [low: number, high: number] {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (const value of values) {
    if (!Number.isFinite(value)) continue;
    if (value < low) low = value;
    if (value > high) high = value;
  }
  return low > high ? [Number.NaN, Number.NaN] : [low, high];
}
