/**
 * A figure as it leaves the program: `null` for unknown (NaN, infinite, missing), else rounded to twelve significant
 * digits, so that the tail of a binary fraction (30.000000000000057) does not read as knowledge.
 */
export function edgeNumber(value: number | null | undefined): number | null {
  if (value === null || value === undefined || !Number.isFinite(value)) return null;
  return Number(value.toPrecision(12));
}

/** Both ends of a range as they leave the program. */
export function edgeRange(range: readonly [number, number] | null | undefined): [number, number] | null {
  const low = edgeNumber(range?.[0]);
  const high = edgeNumber(range?.[1]);
  return low === null || high === null ? null : [low, high];
}
