/** Combinations, that of the newest pull first; those that are not among the newest pulls keep their order behind them. */
export function lastPulledFirst<Row extends { id: string; pulls: number }>(
  combinations: readonly Row[],
  newest: readonly { combinationId: string | null }[],
): Row[] {
  const places = new Map<string, number>();
  for (const [place, { combinationId }] of newest.entries())
    if (combinationId !== null && !places.has(combinationId)) places.set(combinationId, place);
  const placeOf = ({ id, pulls }: Row) => places.get(id) ?? newest.length + (pulls > 0 ? 0 : 1);
  return combinations.toSorted((one, other) => placeOf(one) - placeOf(other));
}
