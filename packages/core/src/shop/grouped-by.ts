/** Things by a key, in the order met; those whose key is `null` stand in no group. */
export function groupedBy<T>(things: readonly T[], keyOf: (thing: T) => string | null): T[][] {
  const groups = new Map<string, T[]>();
  for (const thing of things) {
    const key = keyOf(thing);
    if (key === null) continue;
    const group = groups.get(key);
    if (group) group.push(thing);
    else groups.set(key, [thing]);
  }
  return [...groups.values()];
}
