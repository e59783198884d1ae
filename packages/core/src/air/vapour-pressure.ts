import { type AbsolutePressure, absolutePressure, type Temperature } from '../quantity/index.ts';
import type { Humidity } from './model.ts';
import { saturationPressure } from './saturation-pressure.ts';
import { vapourPressureFromWetBulb } from './wet-bulb.ts';

/**
 * Vapour pressure, Pa, whichever way the moisture was given. Arithmetic only: whether the reading is possible is asked by `airState`.
 * Below 0 °C relative humidity and dew point are taken over ice.
 */
export function vapourPressureFromHumidity(
  humidity: Humidity,
  air: { pressure: AbsolutePressure; temperature: Temperature },
): AbsolutePressure {
  switch (humidity.route) {
    case 'relativeHumidity':
      return absolutePressure(humidity.ratio * saturationPressure(air.temperature));
    case 'dewPoint':
      return absolutePressure(saturationPressure(humidity.temperature));
    case 'wetBulb':
      return vapourPressureFromWetBulb({ ...air, wetBulb: humidity.temperature });
    case 'vapourPressure':
      return humidity.pressure;
  }
}
