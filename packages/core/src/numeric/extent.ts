/** Lowest and highest finite value; `[NaN, NaN]` where there is none. */
export function extentOf(values: Iterable<number>): [low: number, high: number] {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  const take = (value: number) => {
    if (!Number.isFinite(value)) return;
    if (value < low) low = value;
    if (value > high) high = value;
  };
  // By index: iterating over a long series is several times slower.
  if (values instanceof Float64Array)
    for (let index = 0; index < values.length; index++) take(values[index]!);
  else for (const value of values) take(value);
  return low > high ? [Number.NaN, Number.NaN] : [low, high];
}
