import type { StackGeometry } from '@pullbook/charts';

/** Index of the node nearest to a place across the drawing, in the drawing's pixels. */
export function nodeAt(pixel: number, geometry: StackGeometry, nodes: readonly number[]): number {
  const [low, high] = geometry.xRange;
  const share = (pixel - geometry.left) / (geometry.right - geometry.left);
  const at = low + share * (high - low);
  let nearest = 0;
  for (let index = 1; index < nodes.length; index += 1) {
    if (Math.abs(nodes[index]! - at) < Math.abs(nodes[nearest]! - at)) nearest = index;
  }
  return nearest;
}
