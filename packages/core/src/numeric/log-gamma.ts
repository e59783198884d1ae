import { demandPositive } from './demand.ts';

const HALF_LOG_TWO_PI = 0.5 * Math.log(2 * Math.PI);

/** From here on the series is as good as a double. */
const SERIES_FROM = 10;

/**
 * Natural logarithm of the gamma function of `x` above 0: 1e-15 absolute near its zeros 1 and 2, relative elsewhere.
 *
 * @example logGamma(5) // ln 24
 */
export function logGamma(x: number): number {
  demandPositive('argument of the gamma function', x);
  return (x - 0.5) * Math.log(x) - x + HALF_LOG_TWO_PI + stirlingError(x);
}

/**
 * What Stirling's formula leaves: ln Γ(x) - [(x - 1/2) ln x - x + ln √(2π)]. Kept apart since in ratios of gamma functions the
 * large terms cancel and this one stays. Series of Abramowitz and Stegun 6.1.41, from memory; below 10 by steps of one.
 */
export function stirlingError(x: number): number {
  let product = 1;
  let up = x;
  while (up < SERIES_FROM) {
    product *= up;
    up += 1;
  }
  const y = 1 / (up * up);
  const series =
    (1 / 12 -
      y *
        (1 / 360 -
          y *
            (1 / 1260 -
              y * (1 / 1680 - y * (1 / 1188 - y * (691 / 360360 - y * (1 / 156 - y * (3617 / 122400)))))))) /
    up;
  if (up === x) return series;
  return series + (up - 0.5) * Math.log(up) - (x - 0.5) * Math.log(x) - (up - x) - Math.log(product);
}

/**
 * ln(ratio) - (ratio - 1), given both: zero of second order at 1, where the plain difference would lose every digit.
 *
 * @example logLessChange(1.001, 0.001) // -4.99667e-7
 */
export function logLessChange(ratio: number, change: number): number {
  if (change < -0.35 || change > 0.7) return Math.log(ratio) - change;
  // ln(1 + u) = 2 artanh(r) with r = u / (2 + u).
  const r = change / (2 + change);
  const square = r * r;
  let power = 2 * r * square;
  let sum = 0;
  for (let k = 3; ; k += 2) {
    const next = sum + power / k;
    if (next === sum) return sum - r * change;
    sum = next;
    power *= square;
  }
}
