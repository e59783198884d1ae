/** The parts one after the other; a single one that holds anything is given back as it is. */
export function joinedBytes(parts: readonly Uint8Array[]): Uint8Array {
  const filled = parts.filter(({ length }) => length > 0);
  if (filled.length <= 1) return filled[0] ?? new Uint8Array(0);
  const whole = new Uint8Array(filled.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const part of filled) {
    whole.set(part, at);
    at += part.length;
  }
  return whole;
}
