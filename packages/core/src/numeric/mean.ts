/** Mean of the finite values; NaN where there is none. */
export function mean(values: Iterable<number>): number {
  let sum = 0;
  let count = 0;
  for (const value of values) {
    if (!Number.isFinite(value)) continue;
    sum += value;
    count += 1;
  }
  return count === 0 ? Number.NaN : sum / count;
}

/** Standard deviation of a sample (divisor n - 1); `null` with fewer than two values. */
export function sampleDeviation(values: readonly number[]): number | null {
  if (values.length < 2) return null;
  const centre = mean(values);
  return Math.sqrt(values.reduce((sum, value) => sum + (value - centre) ** 2, 0) / (values.length - 1));
}
