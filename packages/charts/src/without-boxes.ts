import type { ListedPoints } from './clip.ts';
import type { Box } from './columns.ts';

const STEP_PX = 2;

/** A line broken where it would run through a text. */
export function withoutBoxes({ x, y }: ListedPoints, boxes: readonly Box[]): ListedPoints {
  const points = { x: [] as number[], y: [] as number[] };
  const add = (atX: number, atY: number) => {
    const isHidden = boxes.some(
      ({ left, right, top, bottom }) => atX > left && atX < right && atY > top && atY < bottom,
    );
    points.x.push(atX);
    points.y.push(isHidden ? Number.NaN : atY);
  };
  for (let index = 0; index < x.length; index += 1) {
    const [fromX, fromY, toX, toY] = [x[index]!, y[index]!, x[index + 1], y[index + 1]];
    add(fromX, fromY);
    const box = segmentBox(fromX, fromY, toX ?? Number.NaN, toY ?? Number.NaN);
    if (toX === undefined || toY === undefined || !boxes.some((one) => touches(one, box))) continue;
    const steps = Math.ceil(Math.hypot(toX - fromX, toY - fromY) / STEP_PX);
    for (let step = 1; step < steps; step += 1)
      add(fromX + (step / steps) * (toX - fromX), fromY + (step / steps) * (toY - fromY));
  }
  return points;
}

const segmentBox = (fromX: number, fromY: number, toX: number, toY: number): Box => ({
  left: Math.min(fromX, toX),
  right: Math.max(fromX, toX),
  top: Math.min(fromY, toY),
  bottom: Math.max(fromY, toY),
});

/** Unlike `overlaps`, a line that runs straight along or down touches too. */
const touches = (one: Box, other: Box): boolean =>
  one.left <= other.right && other.left <= one.right && one.top <= other.bottom && other.top <= one.bottom;
