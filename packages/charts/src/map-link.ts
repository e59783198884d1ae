import type { SceneNode } from './model.ts';
import { px, straight, strokedPath } from './scene-node.ts';

interface Place {
  x: number;
  y: number;
}

interface LinkLook {
  colour: string;
  widthPx: number;
  /** Kept free at either end: the marks' own size. */
  markPx: number;
  opacity: number;
}

/** Nothing is to be seen of a shorter one between its marks. */
const SHORTEST_PX = 4;

/** A thin straight link from one combination's point to another's at one engine speed; with a head: which way it went. */
export function drawMapLink(from: Place, to: Place, look: LinkLook, headPx = 0): SceneNode[] {
  const { colour, widthPx, markPx, opacity } = look;
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  const length = Math.hypot(dx, dy);
  if (length - 2 * markPx < Math.max(SHORTEST_PX, headPx)) return [];
  const [alongX, alongY] = [dx / length, dy / length];
  const at = (fromStart: number, aside = 0): Place => ({
    x: from.x + alongX * fromStart - alongY * aside,
    y: from.y + alongY * fromStart + alongX * aside,
  });
  const [start, end] = [at(markPx), at(length - markPx)];
  const link = straight(start.x, start.y, end.x, end.y, { colour, widthPx, opacity });
  if (headPx === 0) return [link];
  const base = length - markPx - headPx;
  const [one, other] = [at(base, 0.55 * headPx), at(base, -0.55 * headPx)];
  const head = [one, end, other].map(({ x, y }) => `${px(x)},${px(y)}`).join('L');
  return [link, strokedPath(`M${head}`, { colour, widthPx, opacity })];
}
