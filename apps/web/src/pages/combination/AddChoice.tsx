import { useState } from 'react';
import { Button } from '../../parts/Button.tsx';
import { SelectField, TextField } from '../../parts/Field.tsx';
import styles from './sheet-editor.module.css';

/** Something more for the sheet: chosen from a list, or given a name of its own, then added. */
export function AddChoice({
  label,
  act,
  place,
  options,
  own,
  taken,
  onAdd,
}: {
  label: string;
  act: string;
  /** Where the focus is led when nothing else is left. */
  place: string;
  options: { value: string; text: string }[];
  /** The option that asks for a name. */
  own?: { value: string; label: string };
  /** Names that are on the sheet already. */
  taken: string[];
  onAdd: (value: string) => void;
}) {
  const [chosen, setChosen] = useState('');
  const [name, setName] = useState('');
  const isOwn = own !== undefined && chosen === own.value;
  const value = isOwn ? name.trim() : chosen;
  const isTaken = taken.includes(value);

  function add() {
    if (value === '' || isTaken) return;
    setChosen('');
    setName('');
    onAdd(value);
  }

  return (
    <div className={styles.add}>
      <SelectField
        label={label}
        data-place={place}
        value={chosen}
        onChange={(event) => setChosen(event.target.value)}
        options={[{ value: '', text: 'Choose …' }, ...options]}
      />
      {isOwn && (
        <TextField
          label={own.label}
          value={name}
          {...(isTaken ? { help: 'The section has a line of that name.' } : {})}
          onChange={(event) => setName(event.target.value)}
          onKeyDown={(event) => {
            if (event.key !== 'Enter') return;
            event.preventDefault();
            add();
          }}
        />
      )}
      <Button isDisabled={value === '' || isTaken} onPress={add}>
        {act}
      </Button>
    </div>
  );
}
