import { scaleLinear } from 'd3-scale';

/** A straight scale, and its two numbers for a curve of many points. */
export interface StraightScale {
  (value: number): number;
  offset: number;
  factor: number;
}

/** From values to pixels on a straight scale. */
export function straightScale(
  range: readonly [low: number, high: number],
  pixels: readonly [from: number, to: number],
): StraightScale {
  const scale = scaleLinear(range, pixels);
  const offset = scale(0);
  const factor = scale(1) - offset;
  return Object.assign((value: number) => offset + factor * value, { offset, factor });
}
