import type { StackGeometry } from '@pullbook/charts';
import { nearest } from './nearest.ts';

/** Index of the node nearest to a place across the drawing, in the drawing's pixels. */
export function nodeAt(pixel: number, geometry: StackGeometry, nodes: readonly number[]): number {
  const [low, high] = geometry.xRange;
  const share = (pixel - geometry.left) / (geometry.right - geometry.left);
  return nearest(nodes, low + share * (high - low));
}
