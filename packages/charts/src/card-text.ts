import type { Face } from './fonts.ts';
import type { SceneNode } from './model.ts';
import { element, textAt } from './scene-node.ts';
import { withoutDots } from './still-words.ts';
import { balanced, shortened, wrapped } from './text-width.ts';

/** A block of a card: how high it is, and its nodes with its left edge and top given. */
export interface CardBlock {
  heightPx: number;
  /** Something of it had no room and ends in an ellipsis. */
  isCut: boolean;
  draw: (left: number, top: number) => SceneNode[];
}

export interface CardText {
  text: string;
  sizePx: number;
  face: Face;
  colour: string;
}

const ROW = 1.32;

/** Lines of one text under each other, at most so many. */
export function textBlock(
  { text, ...look }: CardText,
  widthPx: number,
  most = Number.POSITIVE_INFINITY,
): CardBlock {
  const { sizePx, face } = look;
  const whole = text === '' || most < 1 ? [] : wrapped(text, widthPx, sizePx, face);
  const isWhole = whole.length <= most;
  const lines = isWhole
    ? whole
    : [...whole.slice(0, most - 1), shortened(whole.slice(most - 1).join(' '), widthPx, sizePx, face)];
  const row = ROW * sizePx;
  return {
    heightPx: lines.length * row,
    isCut: lines.join('').replaceAll(' ', '') !== text.replaceAll(' ', ''),
    draw: (left, top) =>
      (isWhole ? balanced(text, widthPx, sizePx, face) : lines)
        .slice(0, lines.length)
        .map((line, index) => textAt(left, top + index * row + 0.98 * sizePx, withoutDots(line), look)),
  };
}

/** Blocks one under the other. */
export function stacked(blocks: CardBlock[], gapPx: number): CardBlock {
  const shown = blocks.filter(({ heightPx }) => heightPx > 0);
  const heights = shown.reduce((sum, { heightPx }) => sum + heightPx, 0);
  return {
    heightPx: heights + Math.max(0, shown.length - 1) * gapPx,
    isCut: blocks.some(({ isCut }) => isCut),
    draw: (left, top) => {
      let y = top;
      return shown.flatMap((block) => {
        const nodes = block.draw(left, y);
        y += block.heightPx + gapPx;
        return nodes;
      });
    },
  };
}

/** A part of a card in a place of its own: a clip has them come one after the other. */
export const partOf = (nodes: SceneNode[]): SceneNode => element('g', { class: 'part' }, nodes);
