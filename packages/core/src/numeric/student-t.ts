import { demandNumber, demandPositive, demandProbability } from './demand.ts';
import { betaPower, incompleteBeta } from './incomplete-beta.ts';
import { normalCdf, normalQuantile } from './normal.ts';
import { quantileOnLogScale } from './quantile-on-log-scale.ts';

/** From here on the beta function behind a tail loses digits, and the first step away from the normal distribution is exact. */
const NEARLY_NORMAL = 1e8;

/**
 * Share of Student's t distribution below `t`; real `degreesOfFreedom` above 0, Infinity is the normal distribution.
 * 1e-12 relative, in the lower tail too. Abramowitz and Stegun 26.7.1, from memory.
 *
 * @example studentTCdf(2.228139, 10) // 0.975
 */
export function studentTCdf(t: number, degreesOfFreedom: number): number {
  demandNumber('Student t', t);
  demandPositive('degrees of freedom', degreesOfFreedom, true);
  if (degreesOfFreedom === Number.POSITIVE_INFINITY) return normalCdf(t);
  if (degreesOfFreedom >= NEARLY_NORMAL) return normalCdf(asNormal(t, degreesOfFreedom));
  const tail = shareBeyond(Math.abs(t), degreesOfFreedom);
  return t > 0 ? 1 - tail : tail;
}

/**
 * The t below which the share `p` lies; 1e-10 relative.
 *
 * @example studentTQuantile(0.975, 10) // 2.228139
 */
export function studentTQuantile(p: number, degreesOfFreedom: number): number {
  demandProbability('share of Student’s t distribution', p);
  demandPositive('degrees of freedom', degreesOfFreedom, true);
  if (degreesOfFreedom === Number.POSITIVE_INFINITY) return normalQuantile(p);
  if (p === 0.5) return 0;
  if (p > 0.5) return -studentTQuantile(1 - p, degreesOfFreedom);
  const z = -normalQuantile(p);
  // First terms of the expansion in 1 / df (Abramowitz and Stegun 26.7.5); a fair start from two degrees of freedom on.
  const spread = (z * (z * z + 1)) / (4 * degreesOfFreedom);
  if (degreesOfFreedom >= NEARLY_NORMAL) return -(z + spread);
  const start = degreesOfFreedom < 2 ? z * (2 * p) ** (-1 / degreesOfFreedom) : z + spread;
  // Near the middle the tail hardly moves, and the share between 0 and t tells it apart.
  const middle = p > 0.25;
  const found = quantileOnLogScale(
    (t) => {
      const density = densityAt(t, degreesOfFreedom);
      return middle
        ? { probability: shareFromZero(t, degreesOfFreedom), density }
        : { probability: shareBeyond(t, degreesOfFreedom), density };
    },
    middle,
    middle ? 0.5 - p : p,
    start,
  );
  return -found;
}

/** The normal value with the same share below it, to terms in 1 / df² that do not grow with t (Wallace 1959, from memory). */
function asNormal(t: number, df: number): number {
  return (t > 0 ? 1 : -1) * Math.sqrt(df * Math.log1p((t * t) / df)) * (1 - 2 / (8 * df + 3));
}

/** Above t, t not negative. */
function shareBeyond(t: number, df: number): number {
  const { x, y } = beta(t, df);
  return 0.5 * incompleteBeta(df / 2, 0.5, x, y);
}

/** Between 0 and t, t not negative. */
function shareFromZero(t: number, df: number): number {
  const { x, y } = beta(t, df);
  return 0.5 * incompleteBeta(0.5, df / 2, y, x);
}

function densityAt(t: number, df: number): number {
  const { x, y } = beta(t, df);
  return y === 0 ? 0 : betaPower(df / 2, 0.5, x, y) / t;
}

/** df / (df + t²) and its complement. */
function beta(t: number, df: number): { x: number; y: number } {
  const ratio = (t * t) / df;
  return { x: 1 / (1 + ratio), y: 1 / (1 + 1 / ratio) };
}
