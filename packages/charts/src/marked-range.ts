import type { DrawSize, SceneNode, StackGeometry } from './model.ts';
import { proportionsFor } from './proportions.ts';
import { element, px, straight } from './scene-node.ts';
import { THEMES } from './theme.ts';

/** Where a value of the axis lies across a drawn stack, in its pixels; beyond its ends for what is not shown. */
export function placeAcross({ left, right, xRange: [low, high] }: StackGeometry, x: number): number {
  return left + ((x - low) / (high - low)) * (right - left);
}

/** A range that a person marks, laid over a drawn stack as far as it is shown. */
export function drawMarkedRange(
  geometry: StackGeometry,
  [from, to]: readonly [number, number],
  size: DrawSize,
): SceneNode[] {
  const { left, right, top, bottom } = geometry;
  const { ink } = THEMES[size.theme];
  const [start, end] = [from, to]
    .map((x) => Math.max(left, Math.min(right, placeAcross(geometry, x))))
    .toSorted((one, other) => one - other) as [number, number];
  const edge = { colour: ink, widthPx: 1.5 * proportionsFor(size).hairline };
  return [
    element('rect', {
      x: px(start),
      y: px(top),
      width: px(end - start),
      height: px(bottom - top),
      fill: ink,
      opacity: 0.1,
    }),
    straight(start, top, start, bottom, edge),
    straight(end, top, end, bottom, edge),
  ];
}
