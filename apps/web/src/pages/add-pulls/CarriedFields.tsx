import { Fields, SelectField, TextField } from '../../parts/Field.tsx';
import { STANDARDS } from '../../view/standards.ts';
import styles from './add-pulls.module.css';
import type { FileDetails } from './file-details.ts';

type Carried = Pick<FileDetails, 'standard' | 'factor'>;

const STAYS = { value: '', text: 'Stays as it is' };

const OPTIONS = [
  { value: 'not stated', text: 'Not said: taken as observed' },
  { value: 'observed', text: 'No, as observed' },
  ...STANDARDS.filter((one) => one.value !== 'observed').map((one) => ({
    ...one,
    text: `Yes, by ${one.text}`,
  })),
  { value: 'unknown', text: 'Yes, but not known by what' },
];

/** Whether torque and power in the file were corrected before they came here. */
export function CarriedFields({
  carried,
  onCarried,
  stays,
}: {
  carried: Carried;
  onCarried: (change: Partial<Carried>) => void;
  /** In an amendment: what stands stays until something else is said. */
  stays?: { now: boolean; onStays: () => void };
}) {
  const hasFactor = !stays?.now && !['not stated', 'observed', 'unknown'].includes(carried.standard);
  return (
    <fieldset className={styles.part}>
      <legend className={styles.legend}>Torque and power as they came</legend>
      <Fields wide>
        <SelectField
          label="Already corrected?"
          value={stays?.now ? STAYS.value : carried.standard}
          options={stays === undefined ? OPTIONS : [STAYS, ...OPTIONS]}
          onChange={(event) => {
            if (event.target.value === STAYS.value) stays?.onStays();
            else onCarried({ standard: event.target.value as Carried['standard'] });
          }}
          {...(!stays?.now && carried.standard === 'unknown'
            ? { help: 'The figures then stay as they are and are never converted to a standard.' }
            : {})}
        />
        {hasFactor && (
          <TextField
            label="By which factor"
            help="Blank where it is not known: the figures are then not converted."
            inputMode="decimal"
            placeholder="1.021"
            value={carried.factor}
            onChange={(event) => onCarried({ factor: event.target.value })}
          />
        )}
      </Fields>
    </fieldset>
  );
}
