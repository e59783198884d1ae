/** Fields of text as said: missing, not said; `null`, cleared. */
export type SaidFields<T> = { [Field in keyof T]?: string | null | undefined };

/** What stands with what was said put over it; a field said to be `null` is gone. */
export function withSaid<T extends object>(before: T, said: SaidFields<T> | undefined): T {
  const entries = Object.entries({ ...before, ...said }).filter(
    ([, value]) => value !== null && value !== undefined,
  );
  return Object.fromEntries(entries) as T;
}

/** Said fields without those not said; a blank one is cleared. `undefined` where nothing was said. */
export function saidFields<T>(fields: SaidFields<T> | undefined): SaidFields<T> | undefined {
  const entries = Object.entries<string | null | undefined>(fields ?? {}).filter(
    (entry): entry is [string, string | null] => entry[1] !== undefined,
  );
  if (entries.length === 0) return undefined;
  return Object.fromEntries(entries.map(([name, value]) => [name, value?.trim() || null])) as SaidFields<T>;
}
