import { type CardBlock, partOf, textBlock } from './card-text.ts';
import type { Box } from './columns.ts';
import type { SceneNode } from './model.ts';
import type { PictureLook } from './picture-look.ts';
import { THEMES } from './theme.ts';

/** One way to lay a block out: letters of this size, a column of this width, and how brief: 0 says all. */
export interface CardTry {
  sizePx: number;
  widthPx: number;
  brevity: number;
}

export interface CardList<Item> {
  items: readonly Item[];
  blockOf: (item: Item, at: CardTry) => CardBlock;
  mostBrevity: number;
  /** Which of those that are left has to go first: its index. */
  leaveFirst: (items: readonly Item[]) => number;
  /** What is said of those that went: `and 2 more`. */
  leftOut: (items: readonly Item[]) => string;
}

const LARGEST = 1.5;
const STEP = 0.05;
const BETWEEN_COLUMNS_EM = 1.8;
const LEAST_GAP_EM = 0.35;
const MOST_GAP_EM = 1.1;

/** Blocks in their order in columns, as many as have room. */
function inColumns(blocks: CardBlock[], count: number, heightPx: number, gapPx: number): CardBlock[][] {
  const columns: CardBlock[][] = [];
  let rest = blocks;
  for (let column = 0; column < count && rest.length > 0; column += 1) {
    let taken = 0;
    let used = 0;
    for (const block of rest) {
      const next = used + (taken === 0 ? 0 : gapPx) + block.heightPx;
      if (next > heightPx) break;
      used = next;
      taken += 1;
    }
    columns.push(rest.slice(0, taken));
    rest = rest.slice(taken);
  }
  return columns;
}

/** The same blocks in as many columns, but of about one height. */
function evened(blocks: CardBlock[], count: number, heightPx: number, gapPx: number): CardBlock[][] {
  for (let share = 1 / count; share < 1; share += 0.02) {
    const columns = inColumns(blocks, count, share * heightPx, gapPx);
    if (columns.flat().length === blocks.length) return columns;
  }
  return inColumns(blocks, count, heightPx, gapPx);
}

/** Columns of blocks, their width and the size of their letters. */
interface Laid {
  columns: CardBlock[][];
  widthPx: number;
  sizePx: number;
  isWhole: boolean;
  isCut: boolean;
}

function laidOut<Item>(
  { blockOf }: CardList<Item>,
  shown: readonly Item[],
  { sizePx, count, brevity }: { sizePx: number; count: number; brevity: number },
  room: { width: number; height: number },
): Laid {
  const widthPx = (room.width - (count - 1) * BETWEEN_COLUMNS_EM * sizePx) / count;
  const blocks = shown.map((item) => blockOf(item, { sizePx, widthPx, brevity }));
  const columns = evened(blocks, count, room.height, LEAST_GAP_EM * sizePx);
  return {
    columns,
    widthPx,
    sizePx,
    isWhole: columns.flat().length === shown.length,
    isCut: blocks.some(({ isCut }) => isCut),
  };
}

function drawLaid(
  { columns, widthPx, sizePx }: Laid,
  { left, top }: Pick<Box, 'left' | 'top'>,
  heightPx: number,
): SceneNode[] {
  const gaps = columns
    .filter((column) => column.length > 1)
    .map((column) => {
      const heights = column.reduce((sum, block) => sum + block.heightPx, 0);
      return (heightPx - heights) / (column.length - 1);
    });
  const gap = Math.max(LEAST_GAP_EM * sizePx, Math.min(MOST_GAP_EM * sizePx, ...gaps));
  return columns.flatMap((column, index) => {
    let y = top;
    return column.map((block) => {
      const nodes = block.draw(left + index * (widthPx + BETWEEN_COLUMNS_EM * sizePx), y);
      y += block.heightPx + gap;
      return partOf(nodes);
    });
  });
}

/**
 * A list in a frame: letters as large as all of it has room for uncut, in one column or, on a wide frame, two. At the least size what
 * is said of each gets briefer first; then items are left out by the list's own order, and that is said at the end.
 */
export function drawInColumns<Item>(list: CardList<Item>, frame: Box, look: PictureLook): SceneNode[] {
  const { items } = list;
  const room = { width: frame.right - frame.left, height: frame.bottom - frame.top };
  const mostColumns = look.shape === 'wide' || look.shape === 'thumbnail' ? 2 : 1;
  for (let scale = LARGEST; scale > 1 - STEP / 2; scale -= STEP) {
    for (let count = 1; count <= mostColumns; count += 1) {
      const sizePx = Math.max(1, scale) * look.text;
      const found = laidOut(list, items, { sizePx, count, brevity: 0 }, room);
      if (found.isWhole && !found.isCut) return drawLaid(found, frame, room.height);
    }
  }
  const least = { sizePx: look.text };
  for (let brevity = 0; brevity <= list.mostBrevity; brevity += 1) {
    for (let count = 1; count <= mostColumns; count += 1) {
      const found = laidOut(list, items, { ...least, count, brevity }, room);
      if (found.isWhole) return drawLaid(found, frame, room.height);
    }
  }
  const soft = { ...least, face: 'sans', colour: THEMES[look.theme].softInk } as const;
  const shown = [...items];
  const gone: Item[] = [];
  while (shown.length > 1) {
    gone.push(...shown.splice(list.leaveFirst(shown), 1));
    const note = textBlock({ ...soft, text: list.leftOut(gone) }, room.width, 1);
    const left = { ...room, height: room.height - note.heightPx - LEAST_GAP_EM * look.text };
    const found = laidOut(list, shown, { ...least, count: mostColumns, brevity: list.mostBrevity }, left);
    if (found.isWhole)
      return [...drawLaid(found, frame, left.height), ...note.draw(frame.left, frame.bottom - note.heightPx)];
  }
  return [];
}
