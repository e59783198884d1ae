import { rootInBracket } from '../numeric/root-in-bracket.ts';
import { type AbsolutePressure, type Temperature, temperature } from '../quantity/index.ts';
import { SATURATION_RANGE, saturationPressure } from './saturation-pressure.ts';

/**
 * Temperature, K, at which air of this vapour pressure is saturated; below 0 °C it is the frost point, over ice.
 * `null` where there is none between -100 °C and 200 °C: dry air, for one.
 *
 * @example dewPointFromVapourPressure(absolutePressure(2535)) // 294.46 K: 25 °C and 80 % have their dew point at 21.3 °C
 */
export function dewPointFromVapourPressure(vapourPressure: AbsolutePressure): Temperature | null {
  const found = rootInBracket(
    (kelvin) => saturationPressure(temperature(kelvin)) - vapourPressure,
    SATURATION_RANGE,
  );
  return Number.isNaN(found) ? null : temperature(found);
}
