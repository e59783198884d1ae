import { figureOf, fromInside, heightFigure, percentFigure } from '../quantity/index.ts';
import { type Figure, type Remark, remark, said } from '../remark/index.ts';
import { READING_LIMITS } from './limits.ts';

/** Every remark of this folder, by name. */
export const airMessage = {
  pressureOutOfReach: (pascal: number): Remark =>
    remark(
      'refusal',
      'barometer-absurd',
      said`The barometer reads ${kilopascals(pascal)}; allowed are ${kilopascals(READING_LIMITS.pressure.low)} to ${kilopascals(READING_LIMITS.pressure.high)}, absolute. Check the number and its unit (98.2 kPa = 982 mbar = 29.0 inHg).`,
    ),

  temperatureOutOfReach: (kelvin: number): Remark =>
    remark(
      'refusal',
      'air-temperature-absurd',
      said`The inlet air temperature is ${celsius(kelvin)}; allowed are ${celsius(READING_LIMITS.temperature.low)} to ${celsius(READING_LIMITS.temperature.high)}. Check the number and whether it is °C or °F.`,
    ),

  altitudeOutOfReach: (metres: number): Remark =>
    remark(
      'refusal',
      'altitude-absurd',
      said`The altitude is ${height(metres)}; allowed are ${height(READING_LIMITS.altitude.low)} to ${height(READING_LIMITS.altitude.high)}. Check the number and its unit, or leave it out.`,
    ),

  relativeHumidityOutOfReach: (ratio: number): Remark =>
    remark(
      'refusal',
      'humidity-absurd',
      said`The relative humidity is ${percent(ratio)}; allowed are 0 % to 100 %. Write it as 45 % or 0.45, or give dew point, wet bulb or vapour pressure instead.`,
    ),

  moistureTemperatureOutOfReach: (what: 'dew point' | 'wet bulb', kelvin: number): Remark =>
    remark(
      'refusal',
      'humidity-absurd',
      said`The ${what} is ${celsius(kelvin)}; it cannot be used below ${LOWEST_MOISTURE} or above ${HIGHEST_MOISTURE}. Check the number and whether it is °C or °F.`,
    ),

  wetBulbTooLow: (wetBulb: number, temperature: number, lowest: number): Remark =>
    remark(
      'refusal',
      'wet-bulb-too-low',
      said`A wet bulb of ${celsius(wetBulb)} cannot be at ${celsius(temperature)} air temperature: wholly dry air would read ${celsius(lowest)}. Check both readings and their units.`,
    ),

  vapourPressureNegative: (pascal: number): Remark =>
    remark(
      'refusal',
      'humidity-absurd',
      said`The vapour pressure is ${kilopascals(pascal)}; it cannot be below 0 kPa. Check the sign and the unit.`,
    ),

  noDryAirLeft: (vapour: number, pressure: number): Remark =>
    remark(
      'refusal',
      'vapour-above-barometer',
      said`The vapour pressure, ${kilopascals(vapour)}, is not below the barometer, ${kilopascals(pressure)}: there would be no air left. Check the humidity reading and both units.`,
    ),

  supersaturated: (relativeHumidity: number): Remark =>
    remark(
      'caution',
      'supersaturated',
      said`The moisture given is ${percent(relativeHumidity)} relative humidity: more than the air can hold at this temperature. It is used as given; check the humidity sensor and that both were read at the same place.`,
    ),

  humidityUnknown: (saturation: number, pressure: number): Remark =>
    remark(
      'caution',
      'humidity-unknown',
      said`The humidity is not known; the air is taken as dry. Dry pressure and the figures corrected by it are then off by up to ${percent(saturation / pressure)} (saturated air at this temperature). Enter relative humidity, dew point or wet bulb.`,
    ),

  barometerLooksReduced: (reading: {
    pressure: number;
    altitude: number;
    expected: number;
    ifReduced: number;
  }): Remark =>
    remark(
      'caution',
      'barometer-looks-reduced',
      said`The barometer reads ${kilopascals(reading.pressure)} at ${heightFigure(reading.altitude)}, where about ${kilopascals(reading.expected)} is usual (within ${WITHIN}). It looks like a weather report's figure reduced to sea level: the cell would then have about ${kilopascals(reading.ifReduced)}. Enter the station pressure of a barometer in the cell, or mend the altitude.`,
    ),

  barometerOffAltitude: (reading: { pressure: number; altitude: number; expected: number }): Remark =>
    remark(
      'caution',
      'barometer-off-altitude',
      said`The barometer reads ${kilopascals(reading.pressure)} at ${heightFigure(reading.altitude)}, where about ${kilopascals(reading.expected)} is usual; weather seldom moves it by more than ${WITHIN}. Check the barometer, its unit and the altitude.`,
    ),
};

/** Limits of dew point and wet bulb; see `READING_LIMITS`. */
const LOWEST_MOISTURE = figureOf(173.15, 'temperature', { plain: '-100 °C', decimals: 0 });
const HIGHEST_MOISTURE = figureOf(473.15, 'temperature', { plain: '200 °C', decimals: 0 });

/** How far weather may take a barometer; see `barometerRemark`. */
const WITHIN = figureOf(2000, 'absolutePressure', { plain: '2 kPa', decimals: 1 });

/** Both systems in the plain message, since a log cannot know who reads it: `98.2 kPa (29.00 inHg)`. */
function kilopascals(pascal: number): Figure {
  const digits = Math.abs(pascal) < 10_000 ? 3 : 1;
  const inchesOfMercury = fromInside(pascal, 'absolutePressure/inHg');
  const plain = `${fromInside(pascal, 'absolutePressure/kPa').toFixed(digits)} kPa (${inchesOfMercury.toFixed(2)} inHg)`;
  return figureOf(pascal, 'absolutePressure', { plain: Number.isNaN(pascal) ? 'no number' : plain });
}

/** `30.0 °C (86 °F)` */
function celsius(kelvin: number): Figure {
  const fahrenheit = fromInside(kelvin, 'temperature/°F');
  const plain = `${fromInside(kelvin, 'temperature/°C').toFixed(1)} °C (${fahrenheit.toFixed(0)} °F)`;
  return figureOf(kelvin, 'temperature', { plain: Number.isNaN(kelvin) ? 'no number' : plain });
}

const percent = (ratio: number): Figure => ({
  ...percentFigure(ratio, 1),
  plain: Number.isNaN(ratio) ? 'no number' : `${(100 * ratio).toFixed(1)} %`,
});

const height = (metres: number): Figure => heightFigure(metres, `${metres} m`);
