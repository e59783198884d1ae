import { FAHRENHEIT_FROM_ABSOLUTE_ZERO, ICE_POINT } from './defining-constants.ts';
import { unit } from './unit.ts';

const FAHRENHEIT_STEP = 5 / 9;

/** Temperature and temperature difference in K. A bare `C` or `F` is a temperature, never a difference. */
export const UNITS_OF_TEMPERATURE = [
  unit('temperature', '°C', 1, 'C | degC | deg C | degrees C | Celsius | ℃', { offset: ICE_POINT }),
  unit('temperature', '°F', FAHRENHEIT_STEP, 'F | degF | deg F | degrees F | Fahrenheit | ℉', {
    offset: FAHRENHEIT_FROM_ABSOLUTE_ZERO * FAHRENHEIT_STEP,
  }),
  unit('temperature', 'K', 1, 'kelvin | °K | degK'),
  unit('temperature', '°R', FAHRENHEIT_STEP, 'R | degR | deg R | Rankine | °Ra'),

  unit('temperatureDifference', 'K', 1, 'kelvin | °C | degC | Δ°C | ΔC | delta °C | C° | ΔK'),
  unit('temperatureDifference', '°F', FAHRENHEIT_STEP, 'degF | Δ°F | ΔF | delta °F | F° | °R | degR'),
];
