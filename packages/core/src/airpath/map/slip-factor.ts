/**
 * Slip factors of an impeller: whirl of the leaving air over what blades without slip would give it. Textbook formulas for the
 * ordinary number of blades; `blades` counts those at the exit, angles are from radial.
 */

/** Stanitz, radial blades: 1 - 0.63 π / Z. @example stanitzSlip(17) // 0.883 576 */
export const stanitzSlip = (blades: number): number => 1 - (0.63 * Math.PI) / blades;

/** Wiesner: 1 - √cos β / Z^0.7, while the inducer is not too near the exit. @example wiesnerSlip(12, 0) // 0.824 380 */
export const wiesnerSlip = (blades: number, backsweep: number): number =>
  1 - Math.sqrt(Math.cos(backsweep)) / blades ** 0.7;
