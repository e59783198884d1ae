/** Ratio of specific heats of air, and (k - 1) / k. */
const EXPONENT = 0.4 / 1.4;

/**
 * Per cent of gauge boost that one per cent of impeller speed makes, at a pressure ratio: the ideal head of a centrifugal
 * compressor goes with the square of its speed, at one place of its characteristic. Says nothing of which speed it had.
 *
 * d ln(π - 1) / d ln n = 2 · π^(1 - e) · (π^e - 1) / (e · (π - 1)), e = (k - 1) / k; Euler's equation of turbomachines.
 *
 * @example boostPerSpeed(1.7) // 2.39
 */
export function boostPerSpeed(pressureRatio: number): number {
  const head = pressureRatio ** EXPONENT - 1;
  return (2 * pressureRatio ** (1 - EXPONENT) * head) / (EXPONENT * (pressureRatio - 1));
}
