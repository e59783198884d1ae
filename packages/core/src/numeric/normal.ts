import { continuedFraction } from './continued-fraction.ts';
import { demandNumber, demandProbability } from './demand.ts';

const OVER_ROOT_TWO_PI = 1 / Math.sqrt(2 * Math.PI);

/** Density of the standard normal distribution. */
export function normalDensity(z: number): number {
  return OVER_ROOT_TWO_PI * Math.exp(-0.5 * z * z);
}

/**
 * Share of the standard normal distribution below `z`, to 1e-13 relative in the lower tail too. Series about 0 (Abramowitz and
 * Stegun 26.2.11) and continued fraction of the tail (26.2.14), both from memory.
 *
 * @example normalCdf(1.96) // 0.9750
 */
export function normalCdf(z: number): number {
  demandNumber('standard normal value', z);
  const far = Math.abs(z);
  if (far > 40) return z > 0 ? 1 : 0;
  if (far > 2.5) return z > 0 ? 1 - upperTail(far) : upperTail(far);
  let term = z;
  let sum = z;
  for (let k = 3; Math.abs(term) > 1e-17 * Math.abs(sum); k += 2) {
    term *= (z * z) / k;
    sum += term;
  }
  return 0.5 + normalDensity(z) * sum;
}

function upperTail(z: number): number {
  const fraction = continuedFraction(z, (k, pair) => {
    pair.above = k;
    pair.below = z;
  });
  return normalDensity(z) / fraction;
}

/**
 * The value below which the share `p` of the standard normal distribution lies; `p` strictly between 0 and 1. Start of
 * Abramowitz and Stegun 26.2.23 (4.5e-4), then Halley's steps on the share itself.
 *
 * @example normalQuantile(0.975) // 1.959964
 */
export function normalQuantile(p: number): number {
  demandProbability('share of the normal distribution', p);
  if (p > 0.5) return -normalQuantile(1 - p);
  const t = Math.sqrt(-2 * Math.log(p));
  let z =
    (2.515517 + t * (0.802853 + t * 0.010328)) / (1 + t * (1.432788 + t * (0.189269 + t * 0.001308))) - t;
  for (let step = 0; step < 3; step++) {
    const off = (normalCdf(z) - p) / normalDensity(z);
    z -= off / (1 + 0.5 * z * off);
  }
  return p === 0.5 ? 0 : z;
}
