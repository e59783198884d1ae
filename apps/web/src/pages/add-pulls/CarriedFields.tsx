import { Fields, SelectField, TextField } from '../../parts/Field.tsx';
import { STANDARDS } from '../../view/standards.ts';
import styles from './add-pulls.module.css';
import type { FileDetails } from './file-details.ts';
import { Marked } from './Marked.tsx';

type Carried = Pick<FileDetails, 'standard' | 'factor'>;

const OPTIONS = [
  { value: 'not stated', text: 'Not said: taken as observed' },
  { value: 'observed', text: 'No, as observed' },
  ...STANDARDS.filter((one) => one.value !== 'observed').map((one) => ({
    ...one,
    text: `Yes, by ${one.text}`,
  })),
  { value: 'unknown', text: 'Yes, but not known by what' },
];

const textOf = (standard: string) => OPTIONS.find(({ value }) => value === standard)?.text ?? standard;

/** Whether torque and power in the file were corrected before they came here. */
export function CarriedFields({
  carried,
  onCarried,
}: {
  carried: Carried;
  onCarried: (change: Partial<Carried>) => void;
}) {
  const hasFactor = !['not stated', 'observed', 'unknown'].includes(carried.standard);
  return (
    <fieldset className={styles.part}>
      <legend className={styles.legend}>Torque and power as they came</legend>
      <Fields wide>
        <Marked name="standard" value={carried.standard} shown={textOf}>
          {(help) => (
            <SelectField
              label="Already corrected?"
              value={carried.standard}
              options={OPTIONS}
              onChange={(event) => onCarried({ standard: event.target.value as Carried['standard'] })}
              {...(carried.standard === 'unknown'
                ? { help: 'The figures then stay as they are and are never converted to a standard.' }
                : help)}
            />
          )}
        </Marked>
        {hasFactor && (
          <Marked name="factor" value={carried.factor}>
            {(help) => (
              <TextField
                label="By which factor"
                help="Blank where it is not known: the figures are then not converted."
                inputMode="decimal"
                placeholder="1.021"
                value={carried.factor}
                onChange={(event) => onCarried({ factor: event.target.value })}
                {...help}
              />
            )}
          </Marked>
        )}
      </Fields>
    </fieldset>
  );
}
