import {
  type AbsolutePressure,
  absolutePressure,
  STANDARD_ATMOSPHERE,
  STANDARD_GRAVITY,
  type Temperature,
  temperature,
} from '../quantity/index.ts';

/**
 * The lowest layer of the standard atmosphere (ICAO Doc 7488 = ISO 2533 = U.S. Standard Atmosphere 1976): 288.15 K and 101 325 Pa
 * at sea level, 6.5 K colder each geopotential kilometre, up to 11 km.
 */
const SEA_LEVEL_TEMPERATURE = 288.15;
/** K/m */
const LAPSE = 0.0065;
/** J/(kg·K), the standard's own, not that of `moist-air` */
const GAS_CONSTANT = 287.05287;
const PRESSURE_EXPONENT = STANDARD_GRAVITY / (GAS_CONSTANT * LAPSE);
const SEA_LEVEL_DENSITY = STANDARD_ATMOSPHERE / (GAS_CONSTANT * SEA_LEVEL_TEMPERATURE);

/** Temperature, pressure and density at a geopotential altitude, m, from -5 km to 11 km; outside NaN. */
export function standardAtmosphere(altitude: number): {
  temperature: Temperature;
  pressure: AbsolutePressure;
  density: number;
} {
  const inRange = altitude >= -5000 && altitude <= 11_000;
  const kelvin = inRange ? SEA_LEVEL_TEMPERATURE - LAPSE * altitude : Number.NaN;
  const pascal = STANDARD_ATMOSPHERE * (kelvin / SEA_LEVEL_TEMPERATURE) ** PRESSURE_EXPONENT;
  return {
    temperature: temperature(kelvin),
    pressure: absolutePressure(pascal),
    density: pascal / (GAS_CONSTANT * kelvin),
  };
}

/**
 * Altitude, m, at which the standard atmosphere has this density, kg/m³: what the air is like to an engine.
 *
 * @example densityAltitude(1.058067) // 1500
 */
export function densityAltitude(density: number): number {
  const temperatureRatio = (density / SEA_LEVEL_DENSITY) ** (1 / (PRESSURE_EXPONENT - 1));
  return (SEA_LEVEL_TEMPERATURE / LAPSE) * (1 - temperatureRatio);
}
