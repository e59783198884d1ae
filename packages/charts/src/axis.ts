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
  let count = Math.max(2, Math.floor(lengthPx / nearestPx));
  while (count > 2 && (tickStep(low, high, count) / (high - low)) * lengthPx < nearestPx) count -= 1;
  const usual = ticks(low, high, count);
  const chosen = usual.length > 1 ? null : ticksBetween([low, high], (nearestPx * (high - low)) / lengthPx);
  const step = chosen?.step ?? tickStep(low, high, count);
  return { range: [low, high], ticks: chosen?.ticks ?? usual, decimals: decimalsOfStep(step) };
}

/** Steps between the usual ones, for a range in which those leave a single tick: nobody reads a scale off one. */
const STEPS_BETWEEN = [1, 2, 2.5, 4, 5];

function ticksBetween(
  [low, high]: readonly [number, number],
  least: number,
): { step: number; ticks: number[] } | null {
  const power = 10 ** Math.floor(Math.log10(least));
  const steps = [power, 10 * power].flatMap((one) => STEPS_BETWEEN.map((times) => times * one));
  for (const step of steps.filter((one) => one >= least)) {
    const [first, last] = [Math.ceil(low / step - 1e-9), Math.floor(high / step + 1e-9)];
    if (last <= first) continue;
    const all = Array.from({ length: last - first + 1 }, (_, index) => (first + index) * step);
    return { step, ticks: all.map((tick) => Number(tick.toPrecision(12))) };
  }
  return null;
}

/** Intervals that a shared axis aims for: many enough to leave little empty, thinned where they have no room. */
const SHARED_INTERVALS = 8;
/** A span of rounding errors round zero is none. */
const NOTHING = 1e-12;
/** Thinned ticks stand at these times a power of ten too: nobody reads between steps of three. */
const READ_STEPS = [1, 2, 4, 5];

const isRead = (step: number): boolean =>
  READ_STEPS.some((one) => Math.abs(step / 10 ** Math.floor(Math.log10(step) + 1e-9) - one) < 1e-6);

/**
 * The axis that all pictures of a set share: round values right round its reach, whatever is drawn on it and however
 * high it is. Only how many of its values are written goes with the height.
 */
export function sharedAxis(
  [lowest, highest]: readonly [lowest: number, highest: number],
  { lengthPx, nearestPx }: { lengthPx: number; nearestPx: number },
): Axis {
  const least = LEAST_SHARE * Math.max(Math.abs(highest), Math.abs(lowest));
  const wanted = Math.max(highest - lowest, least);
  const span = wanted > NOTHING ? wanted : 1;
  const step = tickStep(lowest, lowest + span, SHARED_INTERVALS);
  const first = Math.floor(lowest / step + 1e-9);
  const last = Math.max(first + 1, Math.ceil((lowest + span) / step - 1e-9));
  let every = 1;
  while (every < last - first && ((lengthPx * every) / (last - first) < nearestPx || !isRead(every * step)))
    every += 1;
  const thinned = Array.from({ length: last - first + 1 }, (_, index) => first + index).filter(
    (count) => count % every === 0,
  );
  const hasRoom = (count: number): boolean => (lengthPx * count) / (last - first) >= nearestPx;
  const counts = thinned.length > 1 ? thinned : twoOf(first, last, hasRoom);
  const valueAt = (count: number) => Number((count * step).toPrecision(12));
  return {
    range: [valueAt(first), valueAt(last)],
    ticks: counts.map(valueAt),
    decimals: decimalsOfStep(thinned.length > 1 ? step * every : step),
  };
}

/** Where thinning leaves a single value: nought and the edge farther from it, else both edges. Nobody reads a scale off one. */
function twoOf(first: number, last: number, hasRoom: (count: number) => boolean): number[] {
  const far = last >= -first ? last : first;
  if (first <= 0 && last >= 0) return hasRoom(Math.abs(far)) ? [0, far].sort((a, b) => a - b) : [0];
  return hasRoom(last - first) ? [first, last] : [last];
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
