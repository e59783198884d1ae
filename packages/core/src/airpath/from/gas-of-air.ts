import type { AirState } from '../../air/index.ts';
import type { GasConstants } from '../model.ts';

/** J/(kg·K) of dry air and of water vapour at constant pressure, about 350 K (tables of ideal gases, from memory). */
const DRY_AIR = 1008;
const WATER_VAPOUR = 1880;

/**
 * Constants of the moist air as it comes in: the gas constant that makes its density, and specific heat by mass.
 *
 * @example dry air at 99 kPa, 25 °C // specificHeat 1008, gasConstant 287.04
 */
export function gasOfAir({ pressure, temperature, density, humidityRatio }: AirState): GasConstants {
  return {
    specificHeat: (DRY_AIR + humidityRatio * WATER_VAPOUR) / (1 + humidityRatio),
    gasConstant: pressure / (density * temperature),
  };
}
