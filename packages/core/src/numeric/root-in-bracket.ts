/** Share of a number that is one or two of its last digits. */
const LAST_DIGIT = 2 ** -52;

/**
 * Where a function that rises through zero between two bounds does so, to the last bit or two. The bracket is kept throughout,
 * so that a jump or a kink inside it is stood; where three points lie on a smooth curve the next one is taken off it by inverse
 * interpolation, else the bracket is halved (Chandrupatla 1997, from memory): ten looks for a smooth function instead of fifty.
 * A function that is positive at the lower bound or negative at the upper has no such place and gives NaN.
 *
 * @example rootInBracket((x) => x * x - 2, { low: 0, high: 2 }) // 1.41421356…
 */
export function rootInBracket(
  rising: (x: number) => number,
  { low, high }: { low: number; high: number },
): number {
  // The newest point, the one across the root from it, and the one that went before.
  let a = { x: high, y: rising(high) };
  let b = { x: low, y: rising(low) };
  let c = a;
  if (!(b.y <= 0 && a.y >= 0)) return Number.NaN;
  let share = 0.5;
  for (;;) {
    const nearest = Math.abs(a.y) < Math.abs(b.y) ? a : b;
    const room = (2 * LAST_DIGIT * Math.abs(nearest.x) + Number.MIN_VALUE) / Math.abs(b.x - a.x);
    if (nearest.y === 0 || !(room < 0.5)) return nearest.x;
    const x = a.x + Math.min(1 - room, Math.max(room, share)) * (b.x - a.x);
    if (x === a.x || x === b.x) return nearest.x;
    const point = { x, y: rising(x) };
    // What is not a number counts as above, so that the bracket still closes.
    if (point.y < 0 === a.y < 0) c = a;
    else {
      c = b;
      b = a;
    }
    a = point;
    share = interpolatedShare(a, b, c);
  }
}

interface Point {
  x: number;
  y: number;
}

/** How far from `a` to `b` the root lies by inverse quadratic interpolation; one half where the three points do not allow it. */
function interpolatedShare(a: Point, b: Point, c: Point): number {
  const alongX = (a.x - b.x) / (c.x - b.x);
  const alongY = (a.y - b.y) / (c.y - b.y);
  if (!(alongY ** 2 < alongX && (1 - alongY) ** 2 < 1 - alongX)) return 0.5;
  const share =
    (a.y / (b.y - a.y)) * (c.y / (b.y - c.y)) +
    ((c.x - a.x) / (b.x - a.x)) * (a.y / (c.y - a.y)) * (b.y / (c.y - b.y));
  return Number.isFinite(share) ? share : 0.5;
}
