import { Fields, TextField } from '../../parts/Field.tsx';
import styles from './add-pulls.module.css';
import type { FileDetails } from './file-details.ts';

type Weather = Pick<FileDetails, 'pressure' | 'temperature' | 'humidity' | 'altitude'>;

/** The air at the engine's inlet, as text with units; blank is unknown. */
export function WeatherFields({
  weather,
  onWeather,
}: {
  weather: Weather;
  onWeather: (change: Partial<Weather>) => void;
}) {
  return (
    <fieldset className={styles.part}>
      <legend className={styles.legend}>The air at the inlet</legend>
      <Fields>
        <TextField
          label="Pressure"
          help="In the cell, not reduced to sea level."
          placeholder="98.2 kPa"
          value={weather.pressure}
          onChange={(event) => onWeather({ pressure: event.target.value })}
        />
        <TextField
          label="Temperature"
          placeholder="30 °C"
          value={weather.temperature}
          onChange={(event) => onWeather({ temperature: event.target.value })}
        />
        <TextField
          label="Humidity"
          help="45 %, 12 C dew point, 20 C wet bulb or 1.2 kPa vapour."
          placeholder="45 %"
          value={weather.humidity}
          onChange={(event) => onWeather({ humidity: event.target.value })}
        />
        <TextField
          label="Altitude of the cell"
          help="Catches a barometer reduced to sea level."
          placeholder="300 m"
          value={weather.altitude}
          onChange={(event) => onWeather({ altitude: event.target.value })}
        />
      </Fields>
    </fieldset>
  );
}
