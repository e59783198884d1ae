import { type Temperature, temperature } from '../quantity/index.ts';

/** K: below it the air is saturated over ice, above over water. The two formulas meet here within 1 ppm. */
const TRIPLE_POINT = 273.16;
/** K: the formulas hold from -100 °C to 200 °C. */
export const SATURATION_RANGE = { low: temperature(173.15), high: temperature(473.15) } as const;

/**
 * Vapour pressure of saturated air, Pa, over ice below the triple point and over water above it.
 * Hyland and Wexler as printed in the ASHRAE Handbook of Fundamentals (2017), ch. 1, eq. 5 (ice) and 6 (water).
 * Holds from -100 °C to 200 °C; outside NaN. Within 0.02 % of IAPWS-IF97 between 0 °C and 50 °C.
 *
 * @example saturationPressure(temperature(298.15)) // 3169.2
 */
export function saturationPressure(at: Temperature): number {
  const inRange = at >= SATURATION_RANGE.low && at <= SATURATION_RANGE.high;
  if (!inRange) return Number.NaN;
  return at < TRIPLE_POINT ? overIce(at) : overWater(at);
}

function overWater(t: number): number {
  return Math.exp(
    -5.8002206e3 / t +
      1.3914993 -
      4.8640239e-2 * t +
      4.1764768e-5 * t ** 2 -
      1.4452093e-8 * t ** 3 +
      6.5459673 * Math.log(t),
  );
}

function overIce(t: number): number {
  return Math.exp(
    -5.6745359e3 / t +
      6.3925247 -
      9.677843e-3 * t +
      6.2215701e-7 * t ** 2 +
      2.0747825e-9 * t ** 3 -
      9.484024e-13 * t ** 4 +
      4.1635019 * Math.log(t),
  );
}
