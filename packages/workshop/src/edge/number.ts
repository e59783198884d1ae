/** A figure as it leaves the program, in full precision; `null` for unknown (NaN, infinite, missing). */
export function edgeNumber(value: number | null | undefined): number | null {
  if (value === null || value === undefined || !Number.isFinite(value)) return null;
  return value;
}

/** Both ends of a range as they leave the program. */
export function edgeRange(range: readonly [number, number] | null | undefined): [number, number] | null {
  const low = edgeNumber(range?.[0]);
  const high = edgeNumber(range?.[1]);
  return low === null || high === null ? null : [low, high];
}
