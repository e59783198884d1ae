import { normalCdf, normalDensity } from '../numeric/normal.ts';
import { rootInBracket } from '../numeric/root-in-bracket.ts';
import { scaleRule } from '../numeric/scale-rule.ts';
import { studentTCdf, studentTQuantile } from '../numeric/student-t.ts';

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
/** Chance left out of a mixture, piece by piece. */
const NEGLIGIBLE = 1e-9;
/** Pieces that a mixture is put into, even on the logarithm. */
const PIECES = 160;
/** Shares of the sum are rounded to one in so many: the point moves by less than 0.001. */
const ROUNDED_TO = 2000;
/** More degrees than these are no other than known. */
const MOST_DEGREES = 1e9;
const MOST_REMEMBERED = 500;

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
  const found = degreesOfPoint(pointOf(shares.reduce(withPart, NOTHING)), scattering);
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

/** A normal deviate whose variance is itself by chance one of `scales`. */
interface Mixture {
  scales: Float64Array;
  chances: Float64Array;
}

const NOTHING: Mixture = { scales: Float64Array.of(0), chances: Float64Array.of(1) };

/** The mixture with one more part: its variance over chi²(df) / df is added to every scale. */
function withPart(
  { scales, chances }: Mixture,
  { share, degreesOfFreedom }: { share: number; degreesOfFreedom: number },
): Mixture {
  const rule = scaleRule(degreesOfFreedom);
  const own = [...rule.scales.keys()].filter((index) => rule.weights[index]! > NEGLIGIBLE);
  const added = own.map((index) => share / rule.scales[index]! ** 2);
  if (scales.length === 1) {
    return {
      scales: Float64Array.from(added, (one) => one + scales[0]!),
      chances: rule.weights.slice(own[0], own.at(-1)! + 1),
    };
  }
  const [low, high] = [Math.min(...added) + Math.min(...scales), Math.max(...added) + Math.max(...scales)];
  const step = Math.log(high / low) / (PIECES - 1);
  const together: Mixture = {
    scales: Float64Array.from({ length: PIECES }, (_, piece) => low * Math.exp(step * piece)),
    chances: new Float64Array(PIECES),
  };
  for (const [at, index] of own.entries())
    for (let old = 0; old < scales.length; old++)
      put(together, step, added[at]! + scales[old]!, rule.weights[index]! * chances[old]!);
  return together;
}

/** Shares a chance between the two pieces beside its scale, so that the mean scale stays what it is. */
function put({ scales, chances }: Mixture, step: number, scale: number, chance: number): void {
  const below = Math.min(PIECES - 2, Math.max(0, Math.floor(Math.log(scale / scales[0]!) / step)));
  const share = (scale - scales[below]!) / (scales[below + 1]! - scales[below]!);
  chances[below]! += chance * (1 - share);
  chances[below + 1]! += chance * share;
}

/** The point below which `MEETS_AT` of a mixture lies, by Newton's steps on the logarithm of what lies above. */
function pointOf({ scales, chances }: Mixture): number {
  let point = 2;
  for (let round = 0; round < 60; round++) {
    let [above, density] = [0, 0];
    for (let piece = 0; piece < scales.length; piece++) {
      const deviation = Math.sqrt(scales[piece]!);
      above += chances[piece]! * normalCdf(-point / deviation);
      density += (chances[piece]! * normalDensity(point / deviation)) / deviation;
    }
    const move = ((Math.log(above) - Math.log(1 - MEETS_AT)) * above) / density;
    point = Math.max(point / 2, point + move);
    if (Math.abs(move) < 1e-7 * point) break;
  }
  return point;
}
