/**
 * The memory of all arrays of numbers in a value, that it can be handed over instead of copied. An array that is only a
 * part of its memory is left to be copied: somebody else may look at the rest.
 */
export function ownedBuffers(value: unknown): ArrayBuffer[] {
  const found = new Set<ArrayBuffer>();
  const seen = new Set<object>();
  const look = (one: unknown): void => {
    if (typeof one !== 'object' || one === null || seen.has(one)) return;
    seen.add(one);
    if (ArrayBuffer.isView(one)) {
      const whole = one.byteLength === one.buffer.byteLength;
      if (whole && one.byteLength > 0 && one.buffer instanceof ArrayBuffer) found.add(one.buffer);
    } else if (one instanceof Map) {
      for (const entry of one.values()) look(entry);
    } else for (const entry of Object.values(one)) look(entry);
  };
  look(value);
  return [...found];
}
