import { type AirReading, type AirState, airState, type Humidity } from '@pullbook/core/air';
import { absolutePressure, temperature } from '@pullbook/core/quantity';
import { remarkAbout } from '@pullbook/core/remark';
import { group, type ReadGroup } from './group-shape.ts';
import { quantity, ratio } from './quantity-shape.ts';
import { atPlace, pathWords, refuse, type Shape } from './shape.ts';

const FIELDS = {
  pressure: quantity('absolutePressure', {
    allowed: [30_000, 120_000],
    example: '98.2 kPa',
    about: "The barometer at the engine's inlet, not reduced to sea level.",
  }),
  temperature: quantity('temperature', {
    allowed: [220, 340],
    example: '25 °C',
    about: "Of the air at the engine's inlet.",
  }),
  relativeHumidity: ratio(
    [0, 1],
    '45 %',
    'Relative humidity; give this, a dew point, a wet bulb or a vapour pressure.',
  ),
  dewPoint: quantity('temperature', { allowed: [200, 330], example: '12 °C', about: 'Dew point.' }),
  wetBulb: quantity('temperature', { allowed: [220, 330], example: '18 °C', about: 'Wet bulb.' }),
  vapourPressure: quantity('absolutePressure', {
    allowed: [0, 20_000],
    example: '1.4 kPa',
    about: 'Pressure of the vapour in the air.',
  }),
  altitude: quantity('length', {
    allowed: [-500, 6000],
    example: '120 m',
    about: 'Of the cell above the sea; lets a barometer reduced to sea level be caught.',
  }),
};

/** Weather as a group of fields, to the air it makes. */
export function air(about: string): Shape<AirState> {
  const written = group(FIELDS, { about, needed: ['pressure', 'temperature'] });
  return {
    get schema() {
      return written.schema;
    },
    read: (value, path, reading) => {
      const said = written.read(value, path, reading);
      if (said?.pressure === undefined || said.temperature === undefined) return undefined;
      const routes = humidities(said);
      if (routes.length > 1)
        return refuse(
          reading,
          path,
          'match-humidity',
          `its moisture is given ${routes.length} times. Keep one of ${routes.map(({ route }) => route).join(', ')}.`,
        );
      const air: AirReading = {
        pressure: absolutePressure(said.pressure),
        temperature: temperature(said.temperature),
        humidity: routes[0] ?? null,
        altitude: said.altitude ?? null,
      };
      const state = airState(air);
      reading.remarks.push(
        ...state.remarks.map((one) => atPlace(reading, path, remarkAbout(pathWords(path), one))),
      );
      return state.ok ? state.value : undefined;
    },
  };
}

function humidities({
  relativeHumidity,
  dewPoint,
  wetBulb,
  vapourPressure,
}: ReadGroup<typeof FIELDS>): Humidity[] {
  return [
    ...(relativeHumidity === undefined
      ? []
      : [{ route: 'relativeHumidity' as const, ratio: relativeHumidity }]),
    ...(dewPoint === undefined ? [] : [{ route: 'dewPoint' as const, temperature: temperature(dewPoint) }]),
    ...(wetBulb === undefined ? [] : [{ route: 'wetBulb' as const, temperature: temperature(wetBulb) }]),
    ...(vapourPressure === undefined
      ? []
      : [{ route: 'vapourPressure' as const, pressure: absolutePressure(vapourPressure) }]),
  ];
}
