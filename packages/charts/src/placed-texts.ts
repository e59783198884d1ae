import { type Box, overlaps } from './columns.ts';
import type { Face } from './fonts.ts';
import type { InkGrid } from './ink-grid.ts';
import type { SceneNode } from './model.ts';
import { straight, textAt } from './scene-node.ts';
import { textWidth } from './text-width.ts';

/** A text that may stand at one of several places of a plot. */
export interface PlaceableText {
  parts: { text: string; face: Face }[];
  colour: string;
  /** Points it may belong to, the best first: the end of a line, or any point of one. */
  anchors: { x: number; y: number }[];
  /** Which way from the anchor: -1 to 1 along and down, the best first; [0, 0] lies on it. */
  ways: readonly (readonly [across: number, down: number])[];
  /** From the anchor to the text's edge, px, the nearest first. */
  distances: readonly number[];
  /** A text with more ink under it is left out. */
  mostInk: number;
}

export interface PlacedText extends PlaceableText {
  box: Box;
  anchor: { x: number; y: number };
}

const PART_GAP = 0.4;

export const partsWidth = (parts: PlaceableText['parts'], sizePx: number): number =>
  parts.reduce(
    (sum, { text, face }, index) =>
      sum + textWidth(text, sizePx, face) + (index === 0 ? 0 : PART_GAP * sizePx),
    0,
  );

/**
 * Each text at the emptiest of its places within the frame, the first given the first served; none lies on another or on a box
 * kept free. One that finds no place is left out: a page says it elsewhere.
 */
export function placedTexts(
  texts: readonly PlaceableText[],
  { frame, kept, ink }: { frame: Box; kept: readonly Box[]; ink: InkGrid },
  sizePx: number,
): PlacedText[] {
  const taken = [...kept];
  return texts.flatMap((text) => {
    const width = partsWidth(text.parts, sizePx);
    let best: { box: Box; anchor: PlacedText['anchor']; cost: number } | null = null;
    for (const [anchorOrder, anchor] of text.anchors.entries()) {
      for (const [distanceOrder, distance] of text.distances.entries()) {
        for (const [wayOrder, way] of text.ways.entries()) {
          const box = boxAt(anchor, way, distance, width, sizePx);
          if (!isWithin(box, frame) || taken.some((other) => overlaps(box, other))) continue;
          const onInk = ink.under(box);
          if (onInk > text.mostInk) continue;
          const cost =
            12 * onInk +
            0.35 * distanceOrder +
            0.06 * wayOrder +
            0.1 * anchorOrder +
            0.5 * inkAcross(anchor, box, ink, sizePx);
          if (best === null || cost < best.cost) best = { box, anchor, cost };
        }
      }
    }
    if (best === null) return [];
    // Two figures side by side without a space would read as one.
    const apart = PART_GAP * sizePx;
    taken.push({ ...best.box, left: best.box.left - apart, right: best.box.right + apart });
    return [{ ...text, box: best.box, anchor: best.anchor }];
  });
}

function boxAt(
  { x, y }: { x: number; y: number },
  [across, down]: readonly [number, number],
  distance: number,
  width: number,
  sizePx: number,
): Box {
  const height = 1.15 * sizePx;
  const middleX = x + across * (width / 2 + distance);
  const middleY = y + down * (height / 2 + distance);
  return {
    left: middleX - width / 2,
    right: middleX + width / 2,
    top: middleY - height / 2,
    bottom: middleY + height / 2,
  };
}

/** Ink on the way from a text to its point, but for the point's own. */
function inkAcross(anchor: { x: number; y: number }, box: Box, ink: InkGrid, sizePx: number): number {
  const near = nearestIn(box, anchor);
  const length = Math.hypot(near.x - anchor.x, near.y - anchor.y);
  let sum = 0;
  for (let along = 0.5 * sizePx; along < length; along += 0.25 * sizePx) {
    const x = anchor.x + (along / length) * (near.x - anchor.x);
    const y = anchor.y + (along / length) * (near.y - anchor.y);
    sum += ink.under({ left: x, right: x, top: y, bottom: y });
  }
  return sum;
}

const nearestIn = (box: Box, { x, y }: { x: number; y: number }) => ({
  x: Math.max(box.left, Math.min(x, box.right)),
  y: Math.max(box.top, Math.min(y, box.bottom)),
});

const isWithin = (box: Box, frame: Box): boolean =>
  box.left >= frame.left && box.right <= frame.right && box.top >= frame.top && box.bottom <= frame.bottom;

/** A placed text, with a hair to its point where it stands away from it. */
export function drawPlacedText(
  { parts, colour, box, anchor }: PlacedText,
  { sizePx, hairline }: { sizePx: number; hairline: number },
): SceneNode[] {
  const nodes: SceneNode[] = [];
  const near = nearestIn(box, anchor);
  if (Math.hypot(near.x - anchor.x, near.y - anchor.y) > 1.2 * sizePx)
    nodes.push(straight(anchor.x, anchor.y, near.x, near.y, { colour, widthPx: hairline, opacity: 0.6 }));
  let x = box.left;
  for (const { text, face } of parts) {
    nodes.push(textAt(x, (box.top + box.bottom) / 2 + 0.36 * sizePx, text, { sizePx, face, colour }));
    x += textWidth(text, sizePx, face) + PART_GAP * sizePx;
  }
  return nodes;
}
