import { gaussLegendre } from '../numeric/gauss-legendre.ts';
import { normalCdf, normalDensity } from '../numeric/normal.ts';
import { interpolantOf } from './chebyshev.ts';
import { dot } from './orthonormal-columns.ts';

/** Bounds between which the chance is interpolated: the lower one rises to where it begins to count; above the upper it is 1. */
const LOWEST_BOUND = 0.3;
const HIGHEST_BOUND = 5;
const BOUNDS = 18;
/** Chance that does not count. */
const NEGLIGIBLE = 1e-6;
/** Steps to which √(1 - a) and √(1 - rho²) are rounded: the critical value moves by less than 0.002. */
const ROUNDED_TO = 1 / 1000;
/** Standard deviations of a row's value that count. */
const FARTHEST = 5;
/** Change of the foreseen end, over the chance of having been out, that counts as none. */
const FORESEEN = 1e-4;
/** Exponent of a step that does not happen. */
const NO_PASSAGE = 20;
const MOST_REMEMBERED = 5000;

const remembered = new Map<string, (bound: number) => number>();

/**
 * Chance that all of `count` standard normal values lie within ± a bound, as a function of the bound: a share `sharedShare` of
 * each one's variance in common, the rest a row with correlation `neighbourCorrelation` between neighbours. `null` where they are
 * all one value. Functions are remembered by rounded arguments.
 */
export function chanceAllInside(
  count: number,
  sharedShare: number,
  neighbourCorrelation: number,
): ((bound: number) => number) | null {
  if (!(Number.isInteger(count) && count >= 1))
    throw new RangeError(`count of estimates is ${count}: it must be a whole number of 1 or more`);
  if (!(sharedShare >= 0 && sharedShare <= 1))
    throw new RangeError(`shared share of the variance is ${sharedShare}: it must be 0 to 1`);
  if (!(neighbourCorrelation >= 0 && neighbourCorrelation < 1))
    throw new RangeError(
      `correlation of neighbours is ${neighbourCorrelation}: it must be 0 or more and below 1`,
    );
  const ownDeviation = rounded(Math.sqrt(1 - sharedShare));
  const newDeviation = Math.max(ROUNDED_TO, rounded(Math.sqrt(1 - neighbourCorrelation ** 2)));
  if (count === 1 || ownDeviation === 0) return null;
  const key = `${count} ${ownDeviation} ${newDeviation}`;
  const known = remembered.get(key);
  if (known !== undefined) return known;
  const chance = chanceByBound(count, ownDeviation, newDeviation);
  if (remembered.size >= MOST_REMEMBERED) remembered.clear();
  remembered.set(key, chance);
  return chance;
}

/** Interpolated as ln(-ln chance), which is nearly straight in the bound's square. Below, ln chance is straight in ln bound. */
function chanceByBound(count: number, ownDeviation: number, newDeviation: number): (bound: number) => number {
  const chanceAt = (bound: number): number => chanceInside(bound, count, ownDeviation, newDeviation);
  let low = LOWEST_BOUND;
  while (chanceAt(low * 1.25) < NEGLIGIBLE) low *= 1.25;
  const curve = interpolantOf(
    (bound) => Math.log(-Math.log(Math.min(1 - 1e-9, Math.max(1e-300, chanceAt(bound))))),
    { low, high: HIGHEST_BOUND, points: BOUNDS },
  );
  const logAt = (bound: number): number => -Math.exp(curve(bound));
  const atLow = logAt(low);
  const slope = (logAt(low * 1.1) - atLow) / Math.log(1.1);
  return (bound) => {
    if (bound >= HIGHEST_BOUND) return 1;
    return Math.exp(bound > low ? logAt(bound) : atLow + slope * Math.log(bound / low));
  };
}

/** Mean over the shared part, which is symmetric: equal steps over its upper half. */
function chanceInside(bound: number, count: number, ownDeviation: number, newDeviation: number): number {
  const sharedDeviation = Math.sqrt(1 - ownDeviation * ownDeviation);
  if (sharedDeviation === 0) return chanceOfRow(-bound, bound, count, newDeviation);
  const step = Math.min(0.5, (0.75 * ownDeviation) / sharedDeviation);
  let sum = 0;
  let all = 0;
  for (let k = 0; k * step < FARTHEST; k++) {
    const weight = (k === 0 ? 1 : 2) * normalDensity(k * step);
    const shared = k * step * sharedDeviation;
    all += weight;
    sum +=
      weight *
      chanceOfRow((-bound - shared) / ownDeviation, (bound - shared) / ownDeviation, count, newDeviation);
  }
  return sum / all;
}

/**
 * Chance that a stationary row stays between two limits all along. With the points of a Gauss-Legendre grid and the square roots
 * of their chances as `start`, it is start' Sⁿ start, where the symmetric S leads from one of the row to the next: so n steps
 * carry 2 n of the row. What is kept from step to step nears its limit geometrically, so that the end is soon foreseen.
 */
function chanceOfRow(low: number, high: number, count: number, newDeviation: number): number {
  const one = normalCdf(high) - normalCdf(low);
  if (newDeviation === 1) return one ** count;
  const from = Math.max(low, -FARTHEST);
  const to = Math.min(high, FARTHEST);
  if (!(one > 1e-9 && to > from)) return 0;
  const half = (to - from) / 2;
  const { nodes, weights } = gaussLegendre(gridPoints(2 * half, newDeviation));
  const at = nodes.map((node) => (from + to) / 2 + half * node);
  const roots = weights.map((weight) => Math.sqrt(weight * half));
  const passing = passage(at, roots, newDeviation);
  let mass: Float64Array = at.map((x, i) => roots[i]! * Math.sqrt(normalDensity(x)));
  let before = mass;
  let spare: Float64Array = new Float64Array(mass.length);
  let chance = dot(mass, mass);
  let kept = Number.NaN;
  let rise = Number.NaN;
  let foreseen = Number.NaN;
  for (let togo = count - 1; togo > 0; togo--) {
    // In turn: from n and n steps to n and n + 1, then to n + 1 and n + 1.
    if (before === mass) {
      mass = carried(mass, passing, spare);
    } else {
      spare = before;
      before = mass;
    }
    const now = dot(before, mass);
    const keptNow = now / chance;
    const riseNow = keptNow - kept;
    const end = now * keptToTheEnd(keptNow, riseNow, riseNow / rise, togo - 1);
    if (Math.abs(end - foreseen) < FORESEEN * (1 - end)) return end;
    chance = now;
    kept = keptNow;
    rise = riseNow;
    foreseen = end;
  }
  return chance;
}

/** Product of what is kept in the steps to go, if its rises shrink by `shrinking` from each to the next; NaN where they do not. */
function keptToTheEnd(kept: number, rise: number, shrinking: number, togo: number): number {
  if (!(shrinking >= 0 && shrinking < 1)) return Number.NaN;
  const further = (rise * shrinking) / (1 - shrinking);
  const limit = kept + further;
  const below = (further * shrinking * (1 - shrinking ** togo)) / (1 - shrinking);
  return Math.exp(togo * Math.log(limit) - below / limit);
}

/** What leads from point to point, line by line up to the point itself; the rest is symmetric. */
interface Passage {
  /** First point of each line. */
  first: Int32Array;
  entries: Float64Array;
}

/** One step on, written into `next`. */
function carried(mass: Float64Array, { first, entries }: Passage, next: Float64Array): Float64Array {
  next.fill(0);
  for (let i = 0, entry = 0; i < mass.length; i++, entry++) {
    const here = mass[i]!;
    let sum = 0;
    for (let j = first[i]!; j < i; j++, entry++) {
      sum += entries[entry]! * mass[j]!;
      next[j]! += entries[entry]! * here;
    }
    next[i]! += sum + entries[entry]! * here;
  }
  return next;
}

/** Points that follow the density of one step over the whole width; by fours, so that few rules are worked out. */
function gridPoints(width: number, newDeviation: number): number {
  return Math.min(300, 4 * Math.ceil((6 + (1.45 * width) / newDeviation) / 4));
}

/**
 * √(density of a point times density of the step from it to the other, and back), weighed. Density of both over the root of
 * their own densities: -a (x - y)² - b x y in the exponent, of which hardly more than a few points on either side are left.
 */
function passage(at: Float64Array, roots: Float64Array, newDeviation: number): Passage {
  const correlation = Math.sqrt(1 - newDeviation * newDeviation);
  const a = 1 / (2 * newDeviation * newDeviation) - 1 / 4;
  const b = 1 / (1 + correlation) - 1 / 2;
  const reach = Math.sqrt(NO_PASSAGE / a);
  const scale = 1 / (Math.sqrt(2 * Math.PI) * newDeviation);
  const first = new Int32Array(at.length);
  let count = 0;
  for (let i = 0, from = 0; i < at.length; i++) {
    while (at[i]! - at[from]! > reach) from++;
    first[i] = from;
    count += i - from + 1;
  }
  const entries = new Float64Array(count);
  for (let i = 0, entry = 0; i < at.length; i++) {
    const x = at[i]!;
    for (let j = first[i]!; j <= i; j++, entry++) {
      const y = at[j]!;
      entries[entry] = scale * roots[i]! * roots[j]! * Math.exp(-a * (x - y) * (x - y) - b * x * y);
    }
  }
  return { first, entries };
}

function rounded(value: number): number {
  return Math.round(value / ROUNDED_TO) * ROUNDED_TO;
}
