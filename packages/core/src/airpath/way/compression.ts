/**
 * Isentropic rise of temperature over inlet temperature for a pressure ratio: `PR^(R/cp) - 1`.
 *
 * @param exponent  R / cp; of dry air near 2/7
 * @example isentropicRise(1.5, 2 / 7) // 0.1228: 36.6 K from 298.15 K
 */
export const isentropicRise = (pressureRatio: number, exponent: number): number =>
  pressureRatio ** exponent - 1;

/** Pressure ratio of an isentropic rise over inlet temperature: the former turned round. */
export const pressureRatioFromRise = (rise: number, exponent: number): number => (1 + rise) ** (1 / exponent);
