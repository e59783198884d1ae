import { demandPositive } from './demand.ts';

/** From here on the asymptotic series are as good as a double. */
const SERIES_FROM = 12;

/**
 * Derivative of ln Γ at `x` above 0. Series of Abramowitz and Stegun 6.3.18, from memory; below 12 by steps of one.
 *
 * @example digamma(1) // -0.5772156649
 */
export function digamma(x: number): number {
  demandPositive('argument of the digamma function', x);
  let below = 0;
  let up = x;
  for (; up < SERIES_FROM; up += 1) below -= 1 / up;
  const y = 1 / (up * up);
  const series =
    y * (1 / 12 - y * (1 / 120 - y * (1 / 252 - y * (1 / 240 - y * (1 / 132 - y * (691 / 32760 - y / 12))))));
  return below + Math.log(up) - 0.5 / up - series;
}

/**
 * Second derivative of ln Γ at `x` above 0 (Abramowitz and Stegun 6.4.12, from memory).
 *
 * @example trigamma(1) // π² / 6
 */
export function trigamma(x: number): number {
  demandPositive('argument of the trigamma function', x);
  let below = 0;
  let up = x;
  for (; up < SERIES_FROM; up += 1) below += 1 / (up * up);
  const y = 1 / (up * up);
  const series =
    y * (1 / 6 - y * (1 / 30 - y * (1 / 42 - y * (1 / 30 - y * (5 / 66 - y * (691 / 2730 - (y * 7) / 6))))));
  return below + 1 / up + 0.5 * y + series / up;
}

/** Third derivative of ln Γ at `x` above 0 (Abramowitz and Stegun 6.4.13, from memory). */
function tetragamma(x: number): number {
  let below = 0;
  let up = x;
  for (; up < SERIES_FROM; up += 1) below -= 2 / (up * up * up);
  const y = 1 / (up * up);
  const series = y * y * (1 / 2 - y * (1 / 6 - y * (1 / 6 - y * (3 / 10 - y * (5 / 6 - (y * 691) / 210)))));
  return below - y - y / up - series;
}

/**
 * The x above 0 whose trigamma is `value` above 0. Newton's method on 1 / trigamma, which is convex and nearly straight, so
 * that it converges from one side (Smyth 2004, appendix, from memory).
 *
 * @example trigammaInverse(Math.PI ** 2 / 6) // 1
 */
export function trigammaInverse(value: number): number {
  demandPositive('trigamma to invert', value);
  let x = 0.5 + 1 / value;
  for (let step = 0; step < 60; step++) {
    const found = trigamma(x);
    const change = (found * (1 - found / value)) / tetragamma(x);
    x += change;
    if (Math.abs(change) <= 1e-14 * x) break;
  }
  return x;
}
