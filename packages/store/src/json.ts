/** JSON text of a value for a column; what is not there becomes `null`. */
export function toJson(value: unknown): string {
  return JSON.stringify(value ?? null);
}

/** The value of a JSON column; its shape is what `toJson` was given. */
export function fromJson<T>(text: string): T {
  return JSON.parse(text) as T;
}
