import type { Points } from './clip.ts';
import type { Box } from './columns.ts';

const CELL_PX = 3;

/** How much is drawn where in a plot, to find the emptiest place for a text. */
export interface InkGrid {
  /** A line of this weight. */
  addLine: (points: Points, weight: number) => void;
  /** Sum of the weights under a box, a share of its area that lines of weight 1 cover. */
  under: (box: Box) => number;
}

/** An empty grid over a plot. Lines may run any way, so that columns alone would not tell what lies where. */
export function inkGrid({ left, right, top, bottom }: Box): InkGrid {
  const columns = Math.max(1, Math.ceil((right - left) / CELL_PX));
  const rows = Math.max(1, Math.ceil((bottom - top) / CELL_PX));
  const cells = new Float32Array(columns * rows);
  const cover = (x: number, y: number, weight: number) => {
    const column = Math.floor((x - left) / CELL_PX);
    const row = Math.floor((y - top) / CELL_PX);
    if (column < 0 || column >= columns || row < 0 || row >= rows) return;
    const cell = row * columns + column;
    cells[cell] = Math.max(cells[cell]!, weight);
  };
  return {
    addLine({ x, y }, weight) {
      for (let index = 0; index < x.length; index += 1) {
        const [fromX, fromY] = [x[index]!, y[index]!];
        if (!(Number.isFinite(fromX) && Number.isFinite(fromY))) continue;
        cover(fromX, fromY, weight);
        const [toX, toY] = [x[index + 1] ?? Number.NaN, y[index + 1] ?? Number.NaN];
        if (!(Number.isFinite(toX) && Number.isFinite(toY))) continue;
        const steps = Math.ceil(Math.max(Math.abs(toX - fromX), Math.abs(toY - fromY)) / CELL_PX);
        for (let step = 1; step < steps; step += 1)
          cover(fromX + (step / steps) * (toX - fromX), fromY + (step / steps) * (toY - fromY), weight);
      }
    },
    under(box) {
      const first = Math.max(0, Math.floor((box.left - left) / CELL_PX));
      const last = Math.min(columns - 1, Math.floor((box.right - left) / CELL_PX));
      const highest = Math.max(0, Math.floor((box.top - top) / CELL_PX));
      const lowest = Math.min(rows - 1, Math.floor((box.bottom - top) / CELL_PX));
      let sum = 0;
      for (let row = highest; row <= lowest; row += 1)
        for (let column = first; column <= last; column += 1) sum += cells[row * columns + column]!;
      const area = ((box.right - box.left) * (box.bottom - box.top)) / CELL_PX ** 2;
      return sum / Math.max(1, area);
    },
  };
}
