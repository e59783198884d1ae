import { fromInside } from '../quantity/index.ts';
import { type Remark, remark } from '../remark/index.ts';
import { READING_LIMITS } from './limits.ts';

/** Every remark of this folder, by name. Numbers with a point. */
export const airMessage = {
  pressureOutOfReach: (pascal: number): Remark =>
    remark(
      'refusal',
      'barometer-absurd',
      `The barometer reads ${kilopascals(pascal)}; allowed are ${kilopascals(READING_LIMITS.pressure.low)} to ` +
        `${kilopascals(READING_LIMITS.pressure.high)}, absolute. Check the number and its unit (98.2 kPa = 982 mbar = 29.0 inHg).`,
    ),

  temperatureOutOfReach: (kelvin: number): Remark =>
    remark(
      'refusal',
      'air-temperature-absurd',
      `The inlet air temperature is ${celsius(kelvin)}; allowed are ${celsius(READING_LIMITS.temperature.low)} to ` +
        `${celsius(READING_LIMITS.temperature.high)}. Check the number and whether it is °C or °F.`,
    ),

  altitudeOutOfReach: (metres: number): Remark =>
    remark(
      'refusal',
      'altitude-absurd',
      `The altitude is ${metres} m; allowed are ${READING_LIMITS.altitude.low} m to ${READING_LIMITS.altitude.high} m. ` +
        'Check the number and its unit, or leave it out.',
    ),

  relativeHumidityOutOfReach: (ratio: number): Remark =>
    remark(
      'refusal',
      'humidity-absurd',
      `The relative humidity is ${percent(ratio)}; allowed are 0 % to 100 %. Write it as 45 % or 0.45, or give dew point, wet bulb ` +
        'or vapour pressure instead.',
    ),

  moistureTemperatureOutOfReach: (what: 'dew point' | 'wet bulb', kelvin: number): Remark =>
    remark(
      'refusal',
      'humidity-absurd',
      `The ${what} is ${celsius(kelvin)}; it cannot be used below -100 °C or above 200 °C. Check the number and whether it is °C or °F.`,
    ),

  wetBulbTooLow: (wetBulb: number, temperature: number, lowest: number): Remark =>
    remark(
      'refusal',
      'wet-bulb-too-low',
      `A wet bulb of ${celsius(wetBulb)} cannot be at ${celsius(temperature)} air temperature: wholly dry air would read ` +
        `${celsius(lowest)}. Check both readings and their units.`,
    ),

  vapourPressureNegative: (pascal: number): Remark =>
    remark(
      'refusal',
      'humidity-absurd',
      `The vapour pressure is ${kilopascals(pascal)}; it cannot be below 0 kPa. Check the sign and the unit.`,
    ),

  noDryAirLeft: (vapour: number, pressure: number): Remark =>
    remark(
      'refusal',
      'vapour-above-barometer',
      `The vapour pressure, ${kilopascals(vapour)}, is not below the barometer, ${kilopascals(pressure)}: there would be no air left. ` +
        'Check the humidity reading and both units.',
    ),

  supersaturated: (relativeHumidity: number): Remark =>
    remark(
      'caution',
      'supersaturated',
      `The moisture given is ${percent(relativeHumidity)} relative humidity: more than the air can hold at this temperature. It is used ` +
        'as given; check the humidity sensor and that both were read at the same place.',
    ),

  humidityUnknown: (saturation: number, pressure: number): Remark =>
    remark(
      'caution',
      'humidity-unknown',
      'The humidity is not known; the air is taken as dry. Dry pressure and the figures corrected by it are then off by up to ' +
        `${percent(saturation / pressure)} (saturated air at this temperature). Enter relative humidity, dew point or wet bulb.`,
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
      `The barometer reads ${kilopascals(reading.pressure)} at ${reading.altitude.toFixed(0)} m, where about ` +
        `${kilopascals(reading.expected)} is usual (within 2 kPa). It looks like a weather report's figure reduced to sea level: the cell ` +
        `would then have about ${kilopascals(reading.ifReduced)}. Enter the station pressure of a barometer in the cell, or mend the altitude.`,
    ),

  barometerOffAltitude: (reading: { pressure: number; altitude: number; expected: number }): Remark =>
    remark(
      'caution',
      'barometer-off-altitude',
      `The barometer reads ${kilopascals(reading.pressure)} at ${reading.altitude.toFixed(0)} m, where about ` +
        `${kilopascals(reading.expected)} is usual; weather seldom moves it by more than 2 kPa. Check the barometer, its unit and the altitude.`,
    ),
};

/** Both systems, since a remark cannot know who reads it: `98.2 kPa (29.00 inHg)`. */
function kilopascals(pascal: number): string {
  if (Number.isNaN(pascal)) return 'no number';
  const shown = Math.abs(pascal) < 10_000 ? 3 : 1;
  const inchesOfMercury = fromInside(pascal, 'absolutePressure/inHg');
  return `${fromInside(pascal, 'absolutePressure/kPa').toFixed(shown)} kPa (${inchesOfMercury.toFixed(2)} inHg)`;
}

/** `30.0 °C (86 °F)` */
function celsius(kelvin: number): string {
  if (Number.isNaN(kelvin)) return 'no number';
  const fahrenheit = fromInside(kelvin, 'temperature/°F');
  return `${fromInside(kelvin, 'temperature/°C').toFixed(1)} °C (${fahrenheit.toFixed(0)} °F)`;
}

function percent(ratio: number): string {
  return Number.isNaN(ratio) ? 'no number' : `${fromInside(ratio, 'ratio/%').toFixed(1)} %`;
}
