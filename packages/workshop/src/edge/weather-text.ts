import type { AirReading, Humidity } from '@pullbook/core/air';
import { absolutePressure, temperature } from '@pullbook/core/quantity';
import { accepted, type Remark, type Result, refused, remark } from '@pullbook/core/remark';
import { isUnknown, optionalQuantityFromText, quantityFromText } from './quantity-text.ts';

/** The air of a pull as text with units, as a person enters it. */
export interface WeatherText {
  /** `98.2 kPa`, `29.92 inHg`: at the station, not reduced to sea level. */
  pressure: string;
  /** `30 C`, `86 °F` */
  temperature: string;
  /** `45 %` (relative), `12 C dew point`, `20 C wet bulb`, `1.2 kPa vapour`; missing: unknown. */
  humidity?: string | null | undefined;
  /** `300 m`; missing: unknown. */
  altitude?: string | null | undefined;
}

/**
 * An air reading from text. Every field that cannot be read has its own remark.
 *
 * @example weatherFromText({ pressure: '98.2 kPa', temperature: '30 C', humidity: '45 %' })
 */
export function weatherFromText(text: WeatherText): Result<AirReading> {
  const pressure = quantityFromText(text.pressure, 'absolutePressure', 'Air pressure');
  const degrees = quantityFromText(text.temperature, 'temperature', 'Air temperature');
  const humidity = humidityFromText(text.humidity);
  const altitude = optionalQuantityFromText(text.altitude, 'length', 'Altitude');
  const remarks = [pressure, degrees, humidity, altitude].flatMap((one) => one.remarks);
  if (!pressure.ok || !degrees.ok || !humidity.ok || !altitude.ok) {
    return refused(...(remarks as [Remark, ...Remark[]]));
  }
  return accepted(
    {
      pressure: absolutePressure(pressure.value),
      temperature: temperature(degrees.value),
      humidity: humidity.value,
      altitude: altitude.value,
    },
    remarks,
  );
}

const ROUTES = '45 % (relative), 12 C dew point, 20 C wet bulb, 1.2 kPa vapour';

function humidityFromText(text: string | null | undefined): Result<Humidity | null> {
  if (isUnknown(text)) return accepted(null);
  const [, amount = '', words = ''] =
    /^(.*?)[\s,]*(dew[\s-]*point|wet[\s-]*bulb|vapou?r(?:[\s-]*pressure)?|relative)?\s*$/i.exec(text) ?? [];
  const route = words.toLowerCase().replace(/[\s-]/g, '');
  if (route.startsWith('dew')) {
    return mapped(quantityFromText(amount, 'temperature', 'Dew point'), (kelvin) => ({
      route: 'dewPoint',
      temperature: temperature(kelvin),
    }));
  }
  if (route.startsWith('wet')) {
    return mapped(quantityFromText(amount, 'temperature', 'Wet bulb'), (kelvin) => ({
      route: 'wetBulb',
      temperature: temperature(kelvin),
    }));
  }
  if (route.startsWith('vap')) {
    return mapped(quantityFromText(amount, 'absolutePressure', 'Vapour pressure'), (pascal) => ({
      route: 'vapourPressure',
      pressure: absolutePressure(pascal),
    }));
  }
  if (!/%\s*$/.test(amount)) {
    return refused(
      remark(
        'refusal',
        'humidity-not-read',
        `Humidity "${text}" does not say what it is. Accepted: ${ROUTES}. Leave it out where it is unknown.`,
      ),
    );
  }
  return mapped(quantityFromText(amount, 'ratio', 'Relative humidity'), (ratio) => ({
    route: 'relativeHumidity',
    ratio,
  }));
}

function mapped<T>(result: Result<number>, make: (value: number) => T): Result<T> {
  return result.ok ? accepted(make(result.value), result.remarks) : result;
}
