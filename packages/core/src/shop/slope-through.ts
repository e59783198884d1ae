import { mean } from '../numeric/index.ts';

/** One slope through several groups, each with a level of its own. */
export interface SlopeThrough {
  /** `null`: no group has two places. */
  slope: number | null;
  /** Sum of squares of the places about their groups' means: the slope's variance is that of a value over this. */
  squaresOfPlace: number;
  /** What slope and levels leave. */
  residualSquares: number;
}

/** Least squares of one slope common to all groups. */
export function slopeThrough(groups: readonly { x: number; y: number }[][]): SlopeThrough {
  let [xx, xy, yy] = [0, 0, 0];
  for (const group of groups) {
    const x0 = mean(group.map(({ x }) => x));
    const y0 = mean(group.map(({ y }) => y));
    for (const { x, y } of group) {
      xx += (x - x0) ** 2;
      xy += (x - x0) * (y - y0);
      yy += (y - y0) ** 2;
    }
  }
  const slope = xx > 0 ? xy / xx : null;
  return { slope, squaresOfPlace: xx, residualSquares: Math.max(0, yy - (slope ?? 0) * xy) };
}
