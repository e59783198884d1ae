/**
 * Wrap, rad, of a belt about the smaller of two pulleys, from their diameters and the distance of their centres, m:
 * `pi - 2 asin((D - d) / 2C)`. Of an open belt without idlers. NaN where the pulleys would overlap.
 *
 * @example wrapOfPulleys(0.180, 0.075, 0.260) // 2.735 rad: 156.7°
 */
export function wrapOfPulleys(large: number, small: number, apart: number): number {
  return Math.PI - 2 * Math.asin((large - small) / (2 * apart));
}

/**
 * Length, m, of an open belt about two pulleys: two straights and two arcs.
 *
 * @example openBeltLength(0.180, 0.075, 0.260) // 0.93119
 */
export function openBeltLength(large: number, small: number, apart: number): number {
  const wrap = wrapOfPulleys(large, small, apart);
  const straight = Math.sqrt(apart ** 2 - ((large - small) / 2) ** 2);
  return 2 * straight + (large / 2) * (2 * Math.PI - wrap) + (small / 2) * wrap;
}

/**
 * Highest ratio of the tight to the slack side's pull before a belt slips: Euler and Eytelwein's `exp(mu theta)`. In the groove of
 * a V or a rib the friction acts as `mu / sin(half the groove's angle)`; `groove` in rad, missing: flat.
 *
 * @example gripRatio({ friction: 0.3, wrap: Math.PI }) // 2.566
 */
export function gripRatio(belt: { friction: number; wrap: number; groove?: number }): number {
  const wedge = belt.groove === undefined ? 1 : Math.sin(belt.groove / 2);
  return Math.exp((belt.friction * belt.wrap) / wedge);
}
