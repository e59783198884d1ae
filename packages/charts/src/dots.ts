import type { Points } from './clip.ts';
import type { SceneNode } from './model.ts';
import { element, px } from './scene-node.ts';

/** Dots along a line, each at one of its points and none nearer to the last than can be told apart. */
export function drawDots(
  { x, y }: Points,
  { colour, ground, text }: { colour: string; ground: string; text: number },
): SceneNode[] {
  const dots: SceneNode[] = [];
  let last = Number.NEGATIVE_INFINITY;
  for (let index = 0; index < x.length; index += 1) {
    const [atX, atY] = [x[index]!, y[index]!];
    if (!Number.isFinite(atY) || Math.abs(atX - last) < 0.95 * text) continue;
    last = atX;
    dots.push(
      element('circle', {
        cx: px(atX),
        cy: px(atY),
        r: px(0.2 * text),
        fill: ground,
        stroke: colour,
        'stroke-width': px(0.1 * text),
      }),
    );
  }
  return dots;
}
