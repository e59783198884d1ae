/**
 * Where a function that rises through zero between two bounds does so, from a near guess: secant steps inside the bracket, a
 * halving where one would leave it or gains too little. Four to six looks where `rootInBracket` of the numeric room takes ten
 * to twelve, for it needs no look at the bounds; a match is solved thousands of times with its neighbour's answer as guess.
 *
 * The lower bound is taken to lie below zero unasked. If the function is still below zero at the upper one, that bound is
 * returned. What is not a number counts as above. The function is looked at last at what is returned.
 *
 * Arguments in a row and not by name: this is the innermost loop, and it must not allocate.
 *
 * @param tolerance relative to the place
 * @returns the place, and in `slope[0]` how steeply the function rises there
 */
export function rootNear(
  rising: (x: number) => number,
  low: number,
  high: number,
  guess: number,
  slope: Float64Array,
  tolerance: number,
): number {
  let below = low;
  let above = high;
  let isHighSeen = false;
  let x = guess > low && guess < high ? guess : 0.5 * (low + high);
  let y = rising(x);
  let before = Number.POSITIVE_INFINITY;
  let next = x - y / slope[0]!;
  for (let look = 0; look < MOST_LOOKS; look++) {
    if (y === 0) return x;
    if (y < 0) below = x;
    else above = x;
    if (above - below <= tolerance * above) return x;
    if (look > 0 && Math.abs(next - x) <= tolerance * x) return x;
    if (next >= above && !isHighSeen && above === high) next = high;
    else if (!(next > below && next < above) || Math.abs(y) > 0.5 * before) next = 0.5 * (below + above);
    before = Math.abs(y);
    const lastX = x;
    const lastY = y;
    x = next;
    y = rising(x);
    if (x === high) {
      isHighSeen = true;
      if (y < 0) return high;
    }
    const steepness = (y - lastY) / (x - lastX);
    if (steepness > 0) slope[0] = steepness;
    next = x - y / steepness;
  }
  return x;
}

/** Halving alone is through after 55. */
const MOST_LOOKS = 120;
