import { Fields, TextField } from '../../parts/Field.tsx';
import styles from './maps.module.css';
import type { Rated } from './rated-text.ts';

/** What is known of a stage whose map nobody has. */
export function RatedFields({ rated, onRated }: { rated: Rated; onRated: (change: Partial<Rated>) => void }) {
  const text = (name: keyof Rated, label: string, placeholder: string, required = false) => (
    <TextField
      label={label}
      placeholder={placeholder}
      required={required}
      value={rated[name]}
      onChange={(event) => onRated({ [name]: event.target.value })}
    />
  );
  return (
    <>
      <p className={styles.plain}>
        A generic stage is scaled to this point. It is marked assumed wherever it is used, with a band.
      </p>
      <Fields>
        {text('flow', 'Air flow', '0.5 kg/s, 66 lb/min', true)}
        {text('pressureRatio', 'Pressure ratio', '2.0', true)}
        {text('speed', 'Impeller speed', '50000 rpm', true)}
        {text('efficiency', 'Efficiency there', '74 %')}
        {text('referencePressure', 'Corrected to a pressure of', '100 kPa', true)}
        {text('referenceTemperature', 'and a temperature of', '25 °C', true)}
        {text('wheelExitDiameter', 'Wheel exit diameter', '105 mm')}
        {text('wheelInletDiameter', 'Wheel inlet diameter', '70 mm')}
      </Fields>
    </>
  );
}
