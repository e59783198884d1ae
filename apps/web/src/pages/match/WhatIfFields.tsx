import type { WhatIfField, WhatIfName } from '@pullbook/views/match';
import { asWhatIfText } from '@pullbook/views/match';
import { useId, useState } from 'react';
import { Button } from '../../parts/Button.tsx';
import fieldStyles from '../../parts/field.module.css';
import { useViewChoices } from '../../view/view-choices.ts';
import styles from './match.module.css';

export type OnWhatIf = (name: WhatIfName, text: string | undefined) => void;

/** Figures of a what-if side by side, each typed or moved by a step. */
export function WhatIfFields({ fields, onChange }: { fields: readonly WhatIfField[]; onChange: OnWhatIf }) {
  return fields.map((field) => <Stepped key={field.name} field={field} onChange={onChange} />);
}

function Stepped({ field, onChange }: { field: WhatIfField; onChange: OnWhatIf }) {
  const id = useId();
  const view = useViewChoices();
  // What is being typed stays as it was typed, until the field is left.
  const [typed, setTyped] = useState<string | null>(null);
  const { name, label, value, less, more, stands, isTried, trouble } = field;
  const step = (text: string | null) => {
    setTyped(null);
    if (text !== null) onChange(name, text);
  };
  return (
    <div className={isTried ? styles.tried : styles.field}>
      <label className={fieldStyles.label} htmlFor={id}>
        {label}
      </label>
      <div className={styles.stepped}>
        <Button aria-label={`${label}: less`} isDisabled={less === null} onPress={() => step(less)}>
          −
        </Button>
        <input
          id={id}
          className={fieldStyles.control}
          autoComplete="off"
          value={typed ?? value}
          aria-describedby={`${id}-help`}
          aria-invalid={trouble !== ''}
          onChange={(event) => {
            setTyped(event.target.value);
            onChange(name, asWhatIfText(event.target.value, view) || undefined);
          }}
          onBlur={() => setTyped(null)}
        />
        <Button aria-label={`${label}: more`} isDisabled={more === null} onPress={() => step(more)}>
          +
        </Button>
      </div>
      <p className={fieldStyles.help} id={`${id}-help`}>
        {trouble !== '' ? <strong>{trouble}</strong> : stands === '' ? 'Not said.' : `As it is: ${stands}.`}
      </p>
    </div>
  );
}
