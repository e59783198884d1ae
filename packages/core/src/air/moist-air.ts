import { type AbsolutePressure, absolutePressure } from '../quantity/index.ts';

/**
 * Moist air as a mixture of ideal gases, after the psychrometrics chapter of the ASHRAE Handbook of Fundamentals (2017, ch. 1).
 * One model for all routes, so that dry pressure, humidity ratio and density of a reading belong together. The full CIPM-2007
 * equation gives densities 1e-4 to 5e-4 higher in engine-test air; that difference is kept as a check, and is a tenth of
 * what a barometer read to 0.1 kPa leaves open.
 */

/** J/(mol·K), as the chapter uses it */
const GAS_CONSTANT = 8.314472;
/** kg/mol */
const DRY_AIR_MOLAR_MASS = 28.966e-3;
/** kg/mol */
const WATER_MOLAR_MASS = 18.015268e-3;

/** J/(kg·K): 287.042 */
export const DRY_AIR_GAS_CONSTANT = GAS_CONSTANT / DRY_AIR_MOLAR_MASS;
/** J/(kg·K): 461.524 */
export const WATER_VAPOUR_GAS_CONSTANT = GAS_CONSTANT / WATER_MOLAR_MASS;
/** Molar mass of water over that of dry air: 0.621 945 */
export const WATER_OVER_AIR = WATER_MOLAR_MASS / DRY_AIR_MOLAR_MASS;

/**
 * Pressure of the air without its vapour, Pa: what most correction standards refer to. The barometer must be the station's own.
 *
 * @example dryPressureFromBarometer({ pressure: 98_000, vapourPressure: 1_200 }) // 96_800
 */
export function dryPressureFromBarometer(air: {
  pressure: AbsolutePressure;
  vapourPressure: AbsolutePressure;
}): AbsolutePressure {
  return absolutePressure(air.pressure - air.vapourPressure);
}

/** kg of water per kg of dry air, from vapour pressure. Same source, eq. 20. Without dry air left: not defined, NaN. */
export function humidityRatioFromVapourPressure(air: {
  pressure: AbsolutePressure;
  vapourPressure: AbsolutePressure;
}): number {
  const dryPressure = dryPressureFromBarometer(air);
  return dryPressure > 0 ? (WATER_OVER_AIR * air.vapourPressure) / dryPressure : Number.NaN;
}

/** Vapour pressure, Pa, from humidity ratio: the former turned round. */
export function vapourPressureFromHumidityRatio(air: {
  pressure: AbsolutePressure;
  humidityRatio: number;
}): AbsolutePressure {
  return absolutePressure((air.pressure * air.humidityRatio) / (WATER_OVER_AIR + air.humidityRatio));
}

/** Density of the moist air, kg/m³: each gas at its own partial pressure. */
export function densityOfMoistAir(air: {
  dryPressure: AbsolutePressure;
  vapourPressure: AbsolutePressure;
  temperature: number;
}): number {
  return (
    air.dryPressure / (DRY_AIR_GAS_CONSTANT * air.temperature) +
    air.vapourPressure / (WATER_VAPOUR_GAS_CONSTANT * air.temperature)
  );
}
