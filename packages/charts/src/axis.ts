import { tickStep, ticks } from 'd3-array';

export interface Axis {
  range: [low: number, high: number];
  ticks: number[];
  /** Decimals that tell the ticks apart. */
  decimals: number;
}

const decimalsOfStep = (step: number): number => {
  const decimals = Math.max(0, -Math.floor(Math.log10(step) + 1e-9));
  return Math.abs(step * 10 ** decimals - Math.round(step * 10 ** decimals)) > 1e-6 ? decimals + 1 : decimals;
};

/** Ticks at round values of 1, 2 or 5 times a power of ten, never nearer to each other than asked. */
export function roundTicks(
  [low, high]: readonly [number, number],
  lengthPx: number,
  nearestPx: number,
): Axis {
  for (let count = Math.max(2, Math.floor(lengthPx / nearestPx)); count > 1; count -= 1) {
    const step = tickStep(low, high, count);
    if ((step / (high - low)) * lengthPx >= nearestPx || count === 2) {
      return { range: [low, high], ticks: ticks(low, high, count), decimals: decimalsOfStep(step) };
    }
  }
  return { range: [low, high], ticks: ticks(low, high, 2), decimals: decimalsOfStep(tickStep(low, high, 2)) };
}

/** A span below this share of the value would only show the last digits of rounding. */
const LEAST_SHARE = 0.002;

/**
 * A vertical axis round the lowest and the highest value it must show: a little room above and below, and up to the next round value
 * where that is near. Headroom is for texts above the curves.
 */
export function roomyAxis(
  [lowest, highest]: readonly [lowest: number, highest: number],
  { lengthPx, nearestPx, headroomPx = 0 }: { lengthPx: number; nearestPx: number; headroomPx?: number },
): Axis {
  const middle = (lowest + highest) / 2;
  const span = Math.max(highest - lowest, LEAST_SHARE * Math.abs(middle)) || 1;
  let low = Math.min(lowest, middle - span / 2) - 0.05 * span;
  let high = Math.max(highest, middle + span / 2) + 0.05 * span;
  const headroom = headroomPx / Math.max(lengthPx - headroomPx, headroomPx, 1);
  // Room for looks must not suggest values on the other side of zero.
  if (lowest >= 0 && highest > 0) low = Math.max(low, 0);
  if (highest <= 0 && lowest < 0) high = Math.min(high, 0);

  high += headroom * (high - low);

  const { ticks: inside } = roundTicks([low, high], lengthPx, nearestPx);
  const step = (inside[1] ?? high) - (inside[0] ?? low);
  const near = 0.45 * step;
  const below = Math.floor(low / step + 1e-9) * step;
  const above = Math.ceil(high / step - 1e-9) * step;
  if (step > 0 && low - below <= near) low = below;
  if (step > 0 && above - high <= near) high = above;
  return roundTicks([low, high], lengthPx, nearestPx);
}
