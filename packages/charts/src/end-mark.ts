import type { SceneNode } from './model.ts';
import type { EndMark } from './palette.ts';
import { element, px } from './scene-node.ts';

/** Corners on the unit circle's scale, all of about the same ink. */
const CORNERS: Record<Exclude<EndMark, 'circle'>, [x: number, y: number][]> = {
  square: [
    [-0.9, -0.9],
    [0.9, -0.9],
    [0.9, 0.9],
    [-0.9, 0.9],
  ],
  triangle: [
    [0, -1.2],
    [1.15, 0.85],
    [-1.15, 0.85],
  ],
  diamond: [
    [0, -1.3],
    [1.3, 0],
    [0, 1.3],
    [-1.3, 0],
  ],
  wedge: [
    [0, 1.2],
    [1.15, -0.85],
    [-1.15, -0.85],
  ],
  plus: [
    [-0.42, -1.25],
    [0.42, -1.25],
    [0.42, -0.42],
    [1.25, -0.42],
    [1.25, 0.42],
    [0.42, 0.42],
    [0.42, 1.25],
    [-0.42, 1.25],
    [-0.42, 0.42],
    [-1.25, 0.42],
    [-1.25, -0.42],
    [-0.42, -0.42],
  ],
  hexagon: [
    [1.1, 0],
    [0.55, 0.95],
    [-0.55, 0.95],
    [-1.1, 0],
    [-0.55, -0.95],
    [0.55, -0.95],
  ],
  bar: [
    [-0.5, -1.35],
    [0.5, -1.35],
    [0.5, 1.35],
    [-0.5, 1.35],
  ],
};

export interface EndMarkLook {
  colour: string;
  /** Drawn hollow where the line is still climbing. */
  hollow?: boolean;
  /** Colour round a full mark and inside a hollow one. */
  ground: string;
  radiusPx: number;
}

/** A combination's mark, at a line's end, on a peak or under the cursor. */
export function endMark(mark: EndMark, x: number, y: number, look: EndMarkLook): SceneNode {
  const { colour, ground, hollow = false, radiusPx } = look;
  const paint = hollow
    ? { fill: ground, stroke: colour, 'stroke-width': px(radiusPx * 0.5) }
    : { fill: colour, stroke: ground, 'stroke-width': px(radiusPx * 0.4) };
  if (mark === 'circle') return element('circle', { cx: px(x), cy: px(y), r: px(radiusPx), ...paint });
  const corners = CORNERS[mark].map(([dx, dy]) => `${px(x + dx * radiusPx)},${px(y + dy * radiusPx)}`);
  return element('path', { d: `M${corners.join('L')}Z`, ...paint });
}
