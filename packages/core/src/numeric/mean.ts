/** Mean of the finite values; NaN where there is none. Summed with its rounding errors kept apart (Neumaier), so that a large level costs no digits. */
export function mean(values: Iterable<number>): number {
  let sum = 0;
  let lost = 0;
  let count = 0;
  for (const value of values) {
    if (!Number.isFinite(value)) continue;
    const next = sum + value;
    lost += Math.abs(sum) >= Math.abs(value) ? sum - next + value : value - next + sum;
    sum = next;
    count += 1;
  }
  return count === 0 ? Number.NaN : (sum + lost) / count;
}

/** Standard deviation of a sample (divisor n - 1); `null` with fewer than two values. Two passes, the second freed of the mean's rounding. */
export function sampleDeviation(values: readonly number[]): number | null {
  if (values.length < 2) return null;
  const centre = mean(values);
  let squares = 0;
  let rest = 0;
  for (const value of values) {
    squares += (value - centre) ** 2;
    rest += value - centre;
  }
  return Math.sqrt((squares - (rest * rest) / values.length) / (values.length - 1));
}
