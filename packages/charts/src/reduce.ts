import type { Points } from './clip.ts';

/** Above so many points a line is reduced before it is drawn. */
export const MOST_POINTS = 20_000;

/**
 * At most four points a pixel column: the first, the lowest, the highest and the last, in their order. What the eye
 * sees stays: every spike reaches as far as before. Breaks (`NaN`) are kept. Points are in pixels.
 */
export function reducedToColumns({ x, y }: Points): Points {
  const reduced = { x: [] as number[], y: [] as number[] };
  let start = 0;
  while (start < x.length) {
    const column = Math.floor(x[start] ?? Number.NaN);
    let low = start;
    let high = start;
    let end = start;
    while (end + 1 < x.length && Math.floor(x[end + 1] ?? Number.NaN) === column) {
      end += 1;
      if ((y[end] ?? 0) < (y[low] ?? 0)) low = end;
      if ((y[end] ?? 0) > (y[high] ?? 0)) high = end;
    }
    const kept = [...new Set([start, low, high, end])].sort((one, other) => one - other);
    for (const index of kept) {
      reduced.x.push(x[index] ?? Number.NaN);
      reduced.y.push(y[index] ?? Number.NaN);
    }
    start = end + 1;
  }
  return reduced;
}
