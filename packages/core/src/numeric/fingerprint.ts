const OFFSET = 0x811c9dc5;
const PRIME = 0x01000193;

/** FNV-1a of the code units, 32 bits, from another start where two of one text are wanted. */
export function hashOfText(text: string, start: number = OFFSET): number {
  let hash = start;
  for (let place = 0; place < text.length; place++) hash = Math.imul(hash ^ text.charCodeAt(place), PRIME);
  return hash >>> 0;
}

/** 64 bits of a text as hex: tells texts apart, keeps nothing secret. */
export function fingerprint(text: string): string {
  const hex = (start: number) => hashOfText(text, start).toString(16).padStart(8, '0');
  return `${hex(OFFSET)}${hex(OFFSET ^ PRIME)}`;
}

/** Digits that last bits of another machine's arithmetic do not reach. */
const DIGITS = 9;

/**
 * Names curves by their figures: the same figures have the same name in every book, whatever ids their pulls have there.
 *
 * @example fingerprintOfCurves([3000, 3500], [80_000, 95_000]).length // 16
 */
export const fingerprintOfCurves = (...curves: readonly (readonly number[])[]): string =>
  fingerprint(curves.map((curve) => curve.map((value) => value.toPrecision(DIGITS)).join(' ')).join('; '));
