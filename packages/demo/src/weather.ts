import type { AirReading } from '@pullbook/core/air';
import { absolutePressure, temperature } from '@pullbook/core/quantity';

/** A reading as the cell's own instruments gave it. */
export function reading(kilopascal: number, celsius: number, humidityPercent: number): AirReading {
  return {
    pressure: absolutePressure(kilopascal * 1000),
    temperature: temperature(celsius + 273.15),
    humidity: { route: 'relativeHumidity', ratio: humidityPercent / 100 },
    altitude: 210,
  };
}

/** The air of the first pulls with the supercharger, in which its figures hold that do not follow the weather. */
export const FIRST_BLOWN_DAY = reading(98.7, 25, 43);

/**
 * What the invented engine makes in this air as a share of its reference figures: dry pressure and the root of
 * temperature, with vapour pressure by a short exponential. On purpose not the formula of any correction standard: no
 * real engine follows one exactly either.
 */
export function shareOfReference(air: AirReading): number {
  const celsius = air.temperature - 273.15;
  const saturation = 611.2 * Math.exp((17.62 * celsius) / (243.12 + celsius));
  const humidity = air.humidity?.route === 'relativeHumidity' ? air.humidity.ratio : 0;
  const dry = air.pressure - humidity * saturation;
  return 1 - 1.17 * (1 - (dry / 99_000) * Math.sqrt(298 / air.temperature));
}
