import { scaleLinear } from 'd3-scale';

/** From values to pixels on a straight scale; as two numbers, since curves have many points. */
export function straightScale(
  range: readonly [low: number, high: number],
  pixels: readonly [from: number, to: number],
): (value: number) => number {
  const scale = scaleLinear(range, pixels);
  const offset = scale(0);
  const factor = scale(1) - offset;
  return (value) => offset + factor * value;
}
