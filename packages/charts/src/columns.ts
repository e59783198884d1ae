import type { Points } from './clip.ts';

export interface Box {
  left: number;
  right: number;
  top: number;
  bottom: number;
}

/** What a curve covers, pixel column by pixel column, to ask quickly whether a text would lie on it. */
export interface CoveredColumns {
  left: number;
  top: Float64Array;
  bottom: Float64Array;
}

export function coveredColumns({ x, y }: Points, left: number, right: number): CoveredColumns {
  const count = Math.max(1, Math.ceil(right - left) + 1);
  const covered: CoveredColumns = {
    left,
    top: new Float64Array(count).fill(Number.POSITIVE_INFINITY),
    bottom: new Float64Array(count).fill(Number.NEGATIVE_INFINITY),
  };
  const cover = (atX: number, atY: number) => {
    const column = Math.round(atX - left);
    if (column < 0 || column >= count) return;
    covered.top[column] = Math.min(covered.top[column] ?? 0, atY);
    covered.bottom[column] = Math.max(covered.bottom[column] ?? 0, atY);
  };
  for (let index = 0; index < x.length; index += 1) {
    const fromX = x[index] ?? Number.NaN;
    const fromY = y[index] ?? Number.NaN;
    if (!Number.isFinite(fromY)) continue;
    cover(fromX, fromY);
    const toX = x[index + 1] ?? Number.NaN;
    const toY = y[index + 1] ?? Number.NaN;
    if (!Number.isFinite(toY)) continue;
    const steps = Math.ceil(Math.abs(toX - fromX));
    for (let step = 1; step < steps; step += 1) {
      cover(fromX + (step / steps) * (toX - fromX), fromY + (step / steps) * (toY - fromY));
    }
  }
  return covered;
}

/** How much of a box's width a curve runs through, 0 to 1. */
export function shareCrossed(box: Box, covered: CoveredColumns): number {
  const first = Math.max(0, Math.floor(box.left - covered.left));
  const last = Math.min(covered.top.length - 1, Math.ceil(box.right - covered.left));
  let crossed = 0;
  for (let column = first; column <= last; column += 1) {
    if ((covered.top[column] ?? 0) <= box.bottom && (covered.bottom[column] ?? 0) >= box.top) crossed += 1;
  }
  return crossed / Math.max(1, box.right - box.left);
}

export const overlaps = (one: Box, other: Box): boolean =>
  one.left < other.right && other.left < one.right && one.top < other.bottom && other.top < one.bottom;
