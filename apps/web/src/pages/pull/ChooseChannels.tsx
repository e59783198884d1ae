import type { RecordedPage } from '@pullbook/views';
import { useState } from 'react';
import { Button } from '../../parts/Button.tsx';
import { Choice, TextField } from '../../parts/Field.tsx';
import styles from './pull.module.css';

/** More would neither be read nor come at once; the server says the same. */
const MOST = 24;

/** Which of the recorded channels have a panel; folded, since those that mean something are there at first. */
export function ChooseChannels({
  channels,
  onChannels,
}: {
  channels: RecordedPage['channels'];
  /** `null`: those that mean something */
  onChannels: (ids: string[] | null) => void;
}) {
  const [wanted, setWanted] = useState('');
  const shown = channels.filter((one) => one.shown).map(({ id }) => id);
  const sought = wanted.trim().toLowerCase();
  const listed = channels.filter(({ name }) => name.toLowerCase().includes(sought));
  return (
    <details className={styles.folded}>
      <summary>
        More channels: {shown.length} of {channels.length} shown
      </summary>
      <TextField
        label="Only names with"
        type="search"
        value={wanted}
        onChange={(event) => setWanted(event.target.value)}
      />
      <fieldset className={styles.channels}>
        <legend className="unseen">Channels to show</legend>
        {listed.map(({ id, name, unit, understood, shown: isShown }) => (
          <Choice
            key={id}
            kind="checkbox"
            checked={isShown}
            disabled={isShown ? shown.length === 1 : shown.length >= MOST}
            onChange={() => onChannels(isShown ? shown.filter((other) => other !== id) : [...shown, id])}
            {...(understood ? {} : { help: 'not understood, kept as it came' })}
          >
            {unit === '' ? name : `${name}, ${unit}`}
          </Choice>
        ))}
      </fieldset>
      <Button small onPress={() => onChannels(null)}>
        Those that mean something
      </Button>
    </details>
  );
}
