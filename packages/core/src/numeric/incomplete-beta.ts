import { continuedFraction } from './continued-fraction.ts';
import { demandPositive } from './demand.ts';
import { logLessChange, stirlingError } from './log-gamma.ts';

/**
 * Regularised incomplete beta function: the share of a beta distribution of `a` and `b` below `x`. `y` is 1 - x, given beside
 * it so that neither end loses digits. Continued fraction of the Digital Library of Mathematical Functions 8.17.22, from memory.
 *
 * @example incompleteBeta(2, 3, 0.5, 0.5) // 0.6875
 */
export function incompleteBeta(a: number, b: number, x: number, y: number): number {
  demandPositive('first parameter of the beta distribution', a);
  demandPositive('second parameter of the beta distribution', b);
  if (!(x >= 0 && y >= 0)) throw new RangeError(`x is ${x} and 1 - x is ${y}: both must be 0 to 1`);
  if (x === 0) return 0;
  if (y === 0) return 1;
  return x * (a + b + 2) <= a + 1 ? lowerShare(a, b, x, y) : 1 - lowerShare(b, a, y, x);
}

/**
 * x^a (1 - x)^b over the beta function of a and b, with the large powers taken together before they are raised: exact to the
 * last digits for a million degrees of freedom too.
 */
export function betaPower(a: number, b: number, x: number, y: number): number {
  const sum = a + b;
  const away = x * b - y * a;
  const exponent = a * logLessChange((x * sum) / a, away / a) + b * logLessChange((y * sum) / b, -away / b);
  const rest = stirlingError(sum) - stirlingError(a) - stirlingError(b);
  return Math.sqrt((a / sum) * (b / (2 * Math.PI))) * Math.exp(exponent + rest);
}

function lowerShare(a: number, b: number, x: number, y: number): number {
  const power = betaPower(a, b, x, y);
  if (power === 0) return 0;
  const fraction = continuedFraction(1, (k, pair) => {
    const m = (k - (k % 2)) / 2;
    pair.below = 1;
    pair.above =
      k % 2 === 0
        ? (m * (b - m) * x) / ((a + k - 1) * (a + k))
        : (-(a + m) * (a + b + m) * x) / ((a + k - 1) * (a + k));
  });
  return power / (a * fraction);
}
