/**
 * A gain over `before` whose changed figure may be off by the factor exp(+-half), inside unit.
 *
 * @example aroundGain(10, 490, 0.01) // [5.02, 15.03]: 500 is 495.02 to 505.03
 */
export function aroundGain(gain: number, before: number, half: number): [low: number, high: number] {
  const changed = before + gain;
  return [gain + changed * Math.expm1(-half), gain + changed * Math.expm1(half)];
}
