/**
 * The numbers every other unit factor is computed from. Exact by definition: international yard and pound (1959),
 * standard gravity (3rd CGPM, 1901), as given in NIST SP 811 appendix B; US gallon 231 in³, UK gallon 4.546 09 L.
 */

/** m */
export const INCH = 0.0254;
/** m */
export const FOOT = 12 * INCH;
/** kg */
export const POUND = 0.45359237;
/** m/s² */
export const STANDARD_GRAVITY = 9.80665;
/** N */
export const POUND_FORCE = POUND * STANDARD_GRAVITY;
/** N */
export const KILOGRAM_FORCE = 1 * STANDARD_GRAVITY;
/** m³ */
export const US_GALLON = 231 * INCH ** 3;
/** m³ */
export const UK_GALLON = 4.54609e-3;
/** W: 550 ft·lbf/s */
export const MECHANICAL_HORSEPOWER = 550 * FOOT * POUND_FORCE;
/** W: 75 kgf·m/s */
export const METRIC_HORSEPOWER = 75 * KILOGRAM_FORCE;
/** Pa */
export const POUND_PER_SQUARE_INCH = POUND_FORCE / INCH ** 2;
/** Pa */
export const STANDARD_ATMOSPHERE = 101_325;

/**
 * Columns of liquid need a density. "Conventional" takes mercury at 13 595.1 kg/m³ and water at 1000 kg/m³ under standard
 * gravity; the columns at a stated temperature are the rounded factors of NIST SP 811 appendix B.9.
 */
const MERCURY_CONVENTIONAL = 13_595.1;
const WATER_CONVENTIONAL = 1000;
/** Pa per metre of column */
export const METRE_OF_MERCURY = MERCURY_CONVENTIONAL * STANDARD_GRAVITY;
/** Pa per metre of column */
export const METRE_OF_WATER = WATER_CONVENTIONAL * STANDARD_GRAVITY;

/** K at 0 °C */
export const ICE_POINT = 273.15;
/** °F between absolute zero and 0 °F */
export const FAHRENHEIT_FROM_ABSOLUTE_ZERO = 459.67;

/** s */
export const MINUTE = 60;
/** s */
export const HOUR = 3600;
