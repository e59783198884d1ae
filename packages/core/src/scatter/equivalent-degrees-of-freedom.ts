import { rootInBracket } from '../numeric/root-in-bracket.ts';
import { studentTCdf, studentTQuantile } from '../numeric/student-t.ts';
import { gridOfU, timesCharacteristicOfT } from './characteristic-of-t.ts';

/** A part of a variance and how well its spread is known. */
export interface KnownVariance {
  variance: number;
  degreesOfFreedom: number;
}

/** Where the two distributions are made to meet: the end of a 95 % band. */
const MEETS_AT = 0.975;
/** A part smaller than this share of the sum is what rounding left of nothing. */
const NO_PART = 1e-12;
/** A part smaller than this share of the sum is taken as known: it moves the point by less than 0.001. */
const SMALL = 0.002;
/** Of the logarithm of u at which characteristic functions are read. */
const STEP = 0.1;
/** A characteristic function below this adds nothing any more. */
const NOTHING_LEFT = 1e-8;
/** Shares of the sum are rounded to one in so many: the point moves by less than 0.001. */
const ROUNDED_TO = 2000;
/** More degrees than these are no other than known. */
const MOST_DEGREES = 1e9;
const MOST_REMEMBERED = 5000;

const remembered = new Map<string, number>();

/**
 * Degrees of freedom of the Student t whose 97.5 % point is that of a sum of independent parts, each a t about its own
 * variance with its own degrees of freedom (Behrens-Fisher; Fisher 1935). That is what spreads known from history and
 * repeats make of a difference, for each true spread lies about the known one. The rule for sums of *sampled* variances
 * (Satterthwaite 1946) promises too much here: with parts of 0.5 and 0.36 and 4 and 8 degrees a 95 % band holds 92 %.
 *
 * One part gives its own degrees exactly. Infinity where nothing scatters. Within 0.003 of the point from 2 degrees on.
 *
 * @example two variances alike with 4 degrees each make 4.2
 */
export function equivalentDegreesOfFreedom(parts: readonly KnownVariance[]): number {
  const sum = parts.reduce((total, { variance }) => total + variance, 0);
  if (!(sum > 0)) return Number.POSITIVE_INFINITY;
  const scattering = parts.filter(({ variance }) => variance > NO_PART * sum);
  if (scattering.length === 1) return scattering[0]!.degreesOfFreedom;
  const shares = scattering.map(({ variance, degreesOfFreedom }) => {
    const share = Math.round((variance / sum) * ROUNDED_TO) / ROUNDED_TO;
    return { share, degreesOfFreedom: share < SMALL ? Number.POSITIVE_INFINITY : degreesOfFreedom };
  });
  const key = shares.map(({ share, degreesOfFreedom }) => `${share} ${degreesOfFreedom}`).join(' ');
  const known = remembered.get(key);
  if (known !== undefined) return known;
  if (remembered.size >= MOST_REMEMBERED) remembered.clear();
  const found = degreesOfPoint(pointOf(shares), scattering);
  remembered.set(key, found);
  return found;
}

/** Of the Student t that has its point there. */
function degreesOfPoint(point: number, parts: readonly KnownVariance[]): number {
  if (point <= studentTQuantile(MEETS_AT, Number.POSITIVE_INFINITY)) return Number.POSITIVE_INFINITY;
  const fewest = Math.min(...parts.map((part) => part.degreesOfFreedom));
  const logarithm = rootInBracket((log) => studentTCdf(point, Math.exp(log)) - MEETS_AT, {
    low: Math.log(fewest / 3),
    high: Math.log(MOST_DEGREES),
  });
  return Number.isNaN(logarithm) ? Number.POSITIVE_INFINITY : Math.exp(logarithm);
}

/**
 * The point below which `MEETS_AT` of a sum of parts lies, by the product of their characteristic functions φ: above c lies
 * 1/2 - 1/π ∫ sin(u c) φ(u) / u du (Gil-Pelaez 1951, from memory). In even steps of ln u both ends fall off, so that the plain sum
 * is exact to 1e-6 for two degrees of freedom and more; longer tails take finer steps. Newton's steps on the logarithm of what
 * lies above, from within.
 */
function pointOf(parts: readonly { share: number; degreesOfFreedom: number }[]): number {
  const step = parts.some(({ degreesOfFreedom }) => degreesOfFreedom < 2) ? STEP / 2 : STEP;
  const grid = gridOfU(step);
  const characteristic = new Float64Array(grid.length).fill(1);
  for (const part of parts) if (part.share > 0) timesCharacteristicOfT(characteristic, part, step);
  const end = characteristic.findIndex((value) => value < NOTHING_LEFT);
  const rows = end < 0 ? grid.length : end;
  // All that lies before the grid, where φ is 1 and a sine its argument.
  const head = grid[0]! / Math.expm1(step);
  let point = 2;
  for (let round = 0; round < 60; round++) {
    let [inside, density] = [head * point, head];
    for (let row = 0; row < rows; row++) {
      const u = grid[row]!;
      inside += Math.sin(u * point) * characteristic[row]!;
      density += u * Math.cos(u * point) * characteristic[row]!;
    }
    const above = 0.5 - (step / Math.PI) * inside;
    const move = (Math.log(above / (1 - MEETS_AT)) * above * Math.PI) / (step * density);
    point = Math.max(point / 2, point + move);
    if (!(Math.abs(move) > 1e-7 * point)) break;
  }
  return point;
}
