import type { WhatIfForm } from '@pullbook/views/match';
import { useId } from 'react';
import fieldStyles from '../../parts/field.module.css';
import styles from './match.module.css';
import type { OnWhatIf } from './WhatIfFields.tsx';

/** Another fuel, by its name or its parts, with the known names to choose from. */
export function FuelTried({
  fuel: { value, isTried, stands, trouble, names },
  onChange,
}: {
  fuel: WhatIfForm['fuel'];
  onChange: OnWhatIf;
}) {
  const id = useId();
  return (
    <div className={isTried ? styles.tried : styles.field}>
      <label className={fieldStyles.label} htmlFor={id}>
        Another fuel
      </label>
      <input
        id={id}
        className={fieldStyles.control}
        autoComplete="off"
        list={`${id}-names`}
        placeholder="E85; 70 % ethanol, 30 % gasoline"
        value={value}
        aria-describedby={`${id}-help`}
        aria-invalid={trouble !== ''}
        onChange={(event) => onChange('fuel', event.target.value || undefined)}
      />
      <datalist id={`${id}-names`}>
        {names.map((name) => (
          <option key={name} value={name} />
        ))}
      </datalist>
      <p className={fieldStyles.help} id={`${id}-help`}>
        {trouble !== '' ? (
          <strong>{trouble}</strong>
        ) : (
          `As it is: ${stands}. What a fuel does is a rule of thumb.`
        )}
      </p>
    </div>
  );
}
