/**
 * Where a function that rises through zero between two bounds does so, by halving the bracket down to the last bit.
 * Sure rather than fast: it stands a jump or a kink inside the bracket. A function that is positive at the lower bound or negative
 * at the upper has no such place and gives NaN.
 *
 * @example rootInBracket((x) => x * x - 2, { low: 0, high: 2 }) // 1.41421356…
 */
export function rootInBracket(rising: (x: number) => number, bracket: { low: number; high: number }): number {
  let { low, high } = bracket;
  if (!(rising(low) <= 0 && rising(high) >= 0)) return Number.NaN;
  for (;;) {
    const middle = low + (high - low) / 2;
    if (middle <= low || middle >= high) return middle;
    if (rising(middle) < 0) low = middle;
    else high = middle;
  }
}
