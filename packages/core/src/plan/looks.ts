/**
 * Counted pulls at which the verdict is looked at: the last is the whole plan, the others lie evenly between the first moment
 * at which every combination has two pulls (one where none is to have more) and the end.
 *
 * @example looksOf(['A', 'A', 'B', 'B', 'A', 'B'], 2) // [4, 6]
 */
export function looksOf(keys: readonly string[], looks: number): number[] {
  const total = keys.length;
  const wanted = Math.min(2, ...[...new Set(keys)].map((key) => countOf(keys, key)));
  const first = [...keys.keys()].find((place) => {
    const made = keys.slice(0, place + 1);
    return [...new Set(keys)].every((key) => countOf(made, key) >= wanted);
  });
  if (first === undefined || looks <= 1) return [total];
  const from = Math.max(first + 1, Math.ceil(total / 2));
  const steps = looks - 1;
  const places = Array.from({ length: looks }, (_, place) =>
    Math.round(from + ((total - from) * place) / steps),
  );
  return [...new Set(places)];
}

const countOf = (keys: readonly string[], key: string): number => keys.filter((one) => one === key).length;
