/** A run of points, broken where `y` is not a number. */
export interface Points {
  x: ArrayLike<number>;
  y: ArrayLike<number>;
}

/** Points that can be gone through one by one. */
export interface ListedPoints extends Points {
  x: readonly number[];
  y: readonly number[];
}

/**
 * The part of a curve within a range of x, with points set on the range's edges where the curve crosses them. `null`
 * and what is not finite break the curve (as `NaN` in the result).
 */
export function clipped(
  x: readonly number[],
  y: readonly (number | null)[],
  [low, high]: readonly [low: number, high: number],
): ListedPoints {
  if (isWholeInside(x, y, low, high)) return { x, y };
  const points = { x: [] as number[], y: [] as number[] };
  const add = (atX: number, atY: number) => {
    points.x.push(atX);
    points.y.push(atY);
  };
  const breakLine = () => {
    if (points.y.length > 0 && !Number.isNaN(points.y.at(-1))) add(Number.NaN, Number.NaN);
  };
  let beforeX = Number.NaN;
  let beforeY = Number.NaN;
  for (let index = 0; index < x.length; index += 1) {
    const hereX = x[index] ?? Number.NaN;
    const hereY = y[index] ?? Number.NaN;
    const isPoint = Number.isFinite(hereX) && Number.isFinite(hereY);
    const inside = isPoint && hereX >= low && hereX <= high;
    const crossing = (edge: number) => {
      if ((beforeX < edge && hereX > edge) || (beforeX > edge && hereX < edge)) {
        add(edge, beforeY + ((edge - beforeX) / (hereX - beforeX)) * (hereY - beforeY));
      }
    };
    if (!isPoint) breakLine();
    else if (hereX >= beforeX) {
      crossing(low);
      if (!inside) crossing(high);
    } else {
      crossing(high);
      if (!inside) crossing(low);
    }
    if (inside) add(hereX, hereY);
    else if (isPoint) breakLine();
    beforeX = isPoint ? hereX : Number.NaN;
    beforeY = isPoint ? hereY : Number.NaN;
  }
  return points;
}

/** Most curves are: they need no copy. */
function isWholeInside(
  x: readonly number[],
  y: readonly (number | null)[],
  low: number,
  high: number,
): y is readonly number[] {
  for (let index = 0; index < x.length; index += 1) {
    const at = x[index] ?? Number.NaN;
    if (!(at >= low && at <= high) || !Number.isFinite(y[index])) return false;
  }
  return true;
}

/** Height of a curve at x, straight between its points; `null` where it is broken or has not begun. */
export function heightAt(x: ArrayLike<number>, y: ArrayLike<number | null>, atX: number): number | null {
  for (let index = 0; index < x.length; index += 1) {
    const hereX = x[index] ?? Number.NaN;
    const hereY = y[index] ?? Number.NaN;
    if (hereX === atX && Number.isFinite(hereY)) return hereY;
    const nextX = x[index + 1] ?? Number.NaN;
    const nextY = y[index + 1] ?? Number.NaN;
    if ((hereX < atX && atX < nextX) || (nextX < atX && atX < hereX)) {
      const height = hereY + ((atX - hereX) / (nextX - hereX)) * (nextY - hereY);
      if (Number.isFinite(height)) return height;
    }
  }
  return null;
}
