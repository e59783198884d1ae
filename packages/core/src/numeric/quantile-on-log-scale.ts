/** exp of this and its negative are still doubles. */
const FARTHEST = 700;
/** A step that counts as none. */
const CLOSE = 1e-15;
const MOST_STEPS = 200;

/**
 * The positive x at which a tail's probability is `target`, sought on logarithmic scales of both, where tails are nearly
 * straight. Newton's steps, and halving of the bracket where one would leave it.
 *
 * @param tail probability and density at x, either may be 0 where a double ends
 * @param lower whether it is the tail below x
 * @param start first guess of x, above 0
 */
export function quantileOnLogScale(
  tail: (x: number) => { probability: number; density: number },
  lower: boolean,
  target: number,
  start: number,
): number {
  const aim = Math.log(target);
  let low = -FARTHEST;
  let high = FARTHEST;
  let u = Math.min(FARTHEST, Math.max(-FARTHEST, Math.log(start)));
  if (Number.isNaN(u)) u = 0;
  for (let step = 0; step < MOST_STEPS; step++) {
    const x = Math.exp(u);
    const { probability, density } = tail(x);
    const off = Math.log(probability) - aim;
    if (off === 0) return x;
    if (off > 0 === lower) high = u;
    else low = u;
    const change = (off * probability) / (density * x) / (lower ? 1 : -1);
    const aimed = u - change;
    if (Math.abs(change) <= CLOSE * Math.max(1, Math.abs(u))) return Math.exp(aimed);
    u = aimed > low && aimed < high ? aimed : low + (high - low) / 2;
    if (high - low <= CLOSE * Math.max(1, Math.abs(u))) return Math.exp(u);
  }
  return Math.exp(u);
}
