import type { ListedPoints, Points } from './clip.ts';

/** What a pixel column shows at most of a line: where it comes in, its lowest, its highest, and where it goes out. */
const MOST_A_COLUMN = 4;

/** Whether so many points over so many pixels are more than the eye can see. */
export const isCrowded = ({ x }: Points, widthPx: number): boolean => x.length > MOST_A_COLUMN * widthPx;

/**
 * At most four points a pixel column: the first, the lowest, the highest and the last, in their order. What the eye
 * sees stays: every spike reaches as far as before. Breaks (`NaN`) are kept. Points are in pixels.
 */
export function reducedToColumns({ x, y }: Points): ListedPoints {
  const reduced = { x: [] as number[], y: [] as number[] };
  let kept = -1;
  const keep = (index: number) => {
    if (index === kept) return;
    kept = index;
    reduced.x.push(x[index]!);
    reduced.y.push(y[index]!);
  };
  let start = 0;
  while (start < x.length) {
    const column = Math.floor(x[start]!);
    let low = start;
    let high = start;
    let end = start;
    while (end + 1 < x.length && Math.floor(x[end + 1]!) === column) {
      end += 1;
      if (y[end]! < y[low]!) low = end;
      if (y[end]! > y[high]!) high = end;
    }
    keep(start);
    keep(Math.min(low, high));
    keep(Math.max(low, high));
    keep(end);
    start = end + 1;
  }
  return reduced;
}
