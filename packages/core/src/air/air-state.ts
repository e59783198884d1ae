import { type AbsolutePressure, absolutePressure } from '../quantity/index.ts';
import { accepted, type Remark, type Result, refused } from '../remark/index.ts';
import { barometerRemark } from './barometer-check.ts';
import { dewPointFromVapourPressure } from './dew-point.ts';
import { READING_LIMITS } from './limits.ts';
import { airMessage } from './messages.ts';
import type { AirReading, AirState, Humidity } from './model.ts';
import { densityOfMoistAir, dryPressureFromBarometer, humidityRatioFromVapourPressure } from './moist-air.ts';
import { SATURATION_RANGE, saturationPressure } from './saturation-pressure.ts';
import { densityAltitude } from './standard-atmosphere.ts';
import { vapourPressureFromHumidity } from './vapour-pressure.ts';
import { wetBulbFromVapourPressure } from './wet-bulb.ts';

/** What rounding of a reading may take beyond saturation unasked: 0.05 % relative humidity. */
const SATURATION_SLACK = 5e-4;

/**
 * The air at the engine's inlet, computed from what was read of it.
 * Refuses what cannot be (a barometer of 98 Pa, a vapour pressure at the barometer's, a wet bulb too low for dry air); flags what
 * is odd and computes it all the same: `supersaturated`, `humidity-unknown` (taken as dry), `barometer-looks-reduced`,
 * `barometer-off-altitude`.
 *
 * @example 98.2 kPa, 30 °C, 45 % // dry pressure 96 289 Pa, density 1.120 kg/m³, density altitude 922 m
 */
export function airState(reading: AirReading): Result<AirState> {
  const refusal = refusalOfReading(reading) ?? (reading.humidity && refusalOfHumidity(reading.humidity));
  if (refusal) return refused(refusal);

  const { pressure, temperature, humidity } = reading;
  const saturation = saturationPressure(temperature);
  const vapourPressure = humidity ? vapourPressureFromHumidity(humidity, reading) : absolutePressure(0);
  const impossible = refusalOfVapour(reading, vapourPressure);
  if (impossible) return refused(impossible);

  const dryPressure = dryPressureFromBarometer({ pressure, vapourPressure });
  const density = densityOfMoistAir({ dryPressure, vapourPressure, temperature });
  const relativeHumidity = vapourPressure / saturation;

  const remarks: Remark[] = [];
  if (!humidity) remarks.push(airMessage.humidityUnknown(saturation, pressure));
  if (relativeHumidity > 1 + SATURATION_SLACK) remarks.push(airMessage.supersaturated(relativeHumidity));
  const barometer =
    reading.altitude === null ? null : barometerRemark({ pressure, altitude: reading.altitude });
  if (barometer) remarks.push(barometer);

  return accepted(
    {
      pressure,
      temperature,
      vapourPressure,
      dryPressure,
      relativeHumidity,
      dewPoint: dewPointFromVapourPressure(vapourPressure),
      humidityRatio: humidityRatioFromVapourPressure({ pressure, vapourPressure }),
      density,
      densityAltitude: densityAltitude(density),
    },
    remarks,
  );
}

function refusalOfReading({ pressure, temperature, altitude }: AirReading): Remark | null {
  if (!isWithin(pressure, READING_LIMITS.pressure)) return airMessage.pressureOutOfReach(pressure);
  if (!isWithin(temperature, READING_LIMITS.temperature))
    return airMessage.temperatureOutOfReach(temperature);
  if (altitude !== null && !isWithin(altitude, READING_LIMITS.altitude)) {
    return airMessage.altitudeOutOfReach(altitude);
  }
  return null;
}

function refusalOfHumidity(humidity: Humidity): Remark | null {
  switch (humidity.route) {
    case 'relativeHumidity':
      return isWithin(humidity.ratio, READING_LIMITS.relativeHumidity)
        ? null
        : airMessage.relativeHumidityOutOfReach(humidity.ratio);
    case 'dewPoint':
      return isWithin(humidity.temperature, SATURATION_RANGE)
        ? null
        : airMessage.moistureTemperatureOutOfReach('dew point', humidity.temperature);
    case 'wetBulb':
      return isWithin(humidity.temperature, SATURATION_RANGE)
        ? null
        : airMessage.moistureTemperatureOutOfReach('wet bulb', humidity.temperature);
    case 'vapourPressure':
      return humidity.pressure >= 0 ? null : airMessage.vapourPressureNegative(humidity.pressure);
  }
}

/** Asked of every route once the vapour pressure is known. Written positively, so that a NaN of any route is refused too. */
function refusalOfVapour(reading: AirReading, vapourPressure: AbsolutePressure): Remark | null {
  const { pressure, temperature, humidity } = reading;
  if (humidity?.route === 'wetBulb' && vapourPressure < 0) {
    const dry = wetBulbFromVapourPressure({ pressure, temperature, vapourPressure: absolutePressure(0) });
    return airMessage.wetBulbTooLow(humidity.temperature, temperature, dry ?? Number.NaN);
  }
  if (vapourPressure < pressure) return null;
  // A wet bulb whose saturated air is all vapour has no humidity ratio; its saturation pressure is what is wrong.
  const told = humidity?.route === 'wetBulb' ? saturationPressure(humidity.temperature) : vapourPressure;
  return airMessage.noDryAirLeft(told, pressure);
}

/** Written positively, so that a NaN is not within. */
function isWithin(value: number, range: { low: number; high: number }): boolean {
  return value >= range.low && value <= range.high;
}
