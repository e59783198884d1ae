import { Fields, TextField } from '../../parts/Field.tsx';
import styles from './add-pulls.module.css';
import type { FileDetails } from './file-details.ts';
import { Marked } from './Marked.tsx';

type Weather = Pick<FileDetails, 'pressure' | 'temperature' | 'humidity' | 'altitude'>;

/** The air at the engine's inlet, as text with units; blank is unknown. */
export function WeatherFields({
  weather,
  onWeather,
}: {
  weather: Weather;
  onWeather: (change: Partial<Weather>) => void;
}) {
  const field = (name: keyof Weather, label: string, placeholder: string, help?: string) => (
    <Marked name={name} value={weather[name]}>
      {(marked) => (
        <TextField
          label={label}
          placeholder={placeholder}
          value={weather[name]}
          onChange={(event) => onWeather({ [name]: event.target.value })}
          {...(help === undefined ? {} : { help })}
          {...marked}
        />
      )}
    </Marked>
  );
  return (
    <fieldset className={styles.part}>
      <legend className={styles.legend}>The air at the inlet</legend>
      <Fields>
        {field('pressure', 'Pressure', '98.2 kPa', 'In the cell, not reduced to sea level.')}
        {field('temperature', 'Temperature', '30 °C')}
        {field('humidity', 'Humidity', '45 %', '45 %, 12 C dew point, 20 C wet bulb or 1.2 kPa vapour.')}
        {field('altitude', 'Altitude of the cell', '300 m', 'Catches a barometer reduced to sea level.')}
      </Fields>
    </fieldset>
  );
}
