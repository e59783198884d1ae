/** Below this a denominator counts as zero. */
const TINY = 1e-300;
const MOST_TERMS = 10_000_000;

/**
 * b0 + a1/(b1 + a2/(b2 + …)) by Lentz's method as modified by Thompson and Barnett (from memory). `term(k, pair)` writes
 * a(k) and b(k), k from 1; ends where a further term changes nothing.
 */
export function continuedFraction(
  start: number,
  term: (k: number, pair: { above: number; below: number }) => void,
): number {
  const pair = { above: 0, below: 0 };
  let value = start === 0 ? TINY : start;
  let upper = value;
  let lower = 0;
  for (let k = 1; k < MOST_TERMS; k++) {
    term(k, pair);
    lower = pair.below + pair.above * lower;
    if (Math.abs(lower) < TINY) lower = TINY;
    upper = pair.below + pair.above / upper;
    if (Math.abs(upper) < TINY) upper = TINY;
    lower = 1 / lower;
    const change = upper * lower;
    value *= change;
    if (Math.abs(change - 1) < 2e-16) return value;
  }
  throw new Error(`continued fraction: no end after ${MOST_TERMS} terms`);
}
