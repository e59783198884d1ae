import { rootInBracket } from '../numeric/root-in-bracket.ts';
import {
  type AbsolutePressure,
  absolutePressure,
  ICE_POINT,
  type Temperature,
  temperature,
} from '../quantity/index.ts';
import { humidityRatioFromVapourPressure, vapourPressureFromHumidityRatio } from './moist-air.ts';
import { SATURATION_RANGE, saturationPressure } from './saturation-pressure.ts';

/**
 * Vapour pressure, Pa, from a thermodynamic wet-bulb temperature. ASHRAE Handbook of Fundamentals (2017), ch. 1, eq. 33 for a
 * wet and eq. 35 for an iced bulb. A wet bulb below that of dry air gives a negative pressure: there is no such air.
 *
 * @example 30 °C, wet bulb 25 °C, 95 461 Pa // 2863 Pa: humidity ratio 0.01923
 */
export function vapourPressureFromWetBulb(air: {
  pressure: AbsolutePressure;
  temperature: Temperature;
  wetBulb: Temperature;
}): AbsolutePressure {
  return vapourPressureFromHumidityRatio({
    pressure: air.pressure,
    humidityRatio: humidityRatioFromWetBulb(air),
  });
}

/**
 * Thermodynamic wet-bulb temperature, K: the former turned round. The wet and the iced bulb part at 0 °C, so a bulb near freezing
 * may be off by some hundredths of a kelvin. `null` for air beyond saturation, which has none.
 */
export function wetBulbFromVapourPressure(air: {
  pressure: AbsolutePressure;
  temperature: Temperature;
  vapourPressure: AbsolutePressure;
}): Temperature | null {
  const humidityRatio = humidityRatioFromVapourPressure(air);
  const found = rootInBracket(
    (kelvin) => humidityRatioFromWetBulb({ ...air, wetBulb: temperature(kelvin) }) - humidityRatio,
    { low: SATURATION_RANGE.low, high: air.temperature },
  );
  return Number.isNaN(found) ? null : temperature(found);
}

function humidityRatioFromWetBulb(air: {
  pressure: AbsolutePressure;
  temperature: Temperature;
  wetBulb: Temperature;
}): number {
  const saturated = humidityRatioFromVapourPressure({
    pressure: air.pressure,
    vapourPressure: absolutePressure(saturationPressure(air.wetBulb)),
  });
  // The equations are in °C and kJ/kg; kept so for comparison with the print.
  const t = air.temperature - ICE_POINT;
  const wet = air.wetBulb - ICE_POINT;
  return wet >= 0
    ? ((2501 - 2.326 * wet) * saturated - 1.006 * (t - wet)) / (2501 + 1.86 * t - 4.186 * wet)
    : ((2830 - 0.24 * wet) * saturated - 1.006 * (t - wet)) / (2830 + 1.86 * t - 2.1 * wet);
}
