import type { PullRow } from '@pullbook/views';
import { useState } from 'react';
import type { CombinationRow } from '../../api/edge.ts';
import { Button } from '../../parts/Button.tsx';
import { SelectField, TextField } from '../../parts/Field.tsx';
import { PullTicks } from '../../parts/PullTicks.tsx';
import { TakenApartField } from '../../parts/TakenApartField.tsx';
import { NewCombinationDialog } from '../combination/NewCombinationDialog.tsx';
import type { TrialRow } from './first-rows.ts';
import styles from './start-trial.module.css';

/** One combination of the trial: which, what it is called on the chart, which of its pulls count. */
export function CombinationFields({
  letter,
  isBaseline,
  comesFromBaseline,
  row,
  taken,
  pulls,
  combinations,
  onRow,
  onRemove,
}: {
  letter: string;
  isBaseline: boolean;
  /** Whether it is held against a baseline. */
  comesFromBaseline: boolean;
  row: TrialRow;
  taken: string[];
  pulls: PullRow[];
  combinations: CombinationRow[];
  onRow: (row: TrialRow) => void;
  onRemove: (() => void) | null;
}) {
  const [making, setMaking] = useState(false);
  const own = pulls.filter((pull) => pull.combinationId === row.combinationId);
  const name = isBaseline ? `${letter}, the baseline` : letter;
  return (
    <fieldset className={styles.row}>
      <legend className="unseen">Combination {name}</legend>
      <span className={styles.letter} aria-hidden="true">
        {letter}
      </span>
      <div className={styles.body}>
        <div className={styles.fields}>
          <SelectField
            label={isBaseline ? 'The baseline' : 'A combination'}
            required
            value={row.combinationId}
            onChange={(event) => onRow({ ...row, combinationId: event.target.value, leftOut: [] })}
            options={[
              { value: '', text: 'Choose …' },
              ...combinations
                .filter((one) => one.id === row.combinationId || !taken.includes(one.id))
                .map((one) => ({ value: one.id, text: `${one.name} · ${one.engineName}` })),
            ]}
          />
          <TextField
            label="On the chart as"
            placeholder={isBaseline ? 'base cam' : 'longer cam'}
            maxLength={40}
            value={row.shortName}
            onChange={(event) => onRow({ ...row, shortName: event.target.value })}
          />
          {comesFromBaseline && (
            <TakenApartField value={row.takenApart} onSay={(takenApart) => onRow({ ...row, takenApart })} />
          )}
        </div>
        {row.combinationId !== '' && own.length === 0 && (
          <p className={styles.warn}>
            No pull of it yet. The trial can be started; it will say what is missing.
          </p>
        )}
        {own.length > 0 && (
          <PullTicks
            legend={`Pulls of ${name}`}
            pulls={own}
            ticked={(id) => !row.leftOut.includes(id)}
            onTick={(id, isTicked) =>
              onRow({
                ...row,
                leftOut: isTicked ? row.leftOut.filter((other) => other !== id) : [...row.leftOut, id],
              })
            }
          />
        )}
        <div className={styles.acts}>
          <Button look="quiet" small onPress={() => setMaking(true)}>
            New from a sheet …
          </Button>
          {onRemove !== null && (
            <Button look="quiet" small onPress={onRemove} aria-label={`Remove ${letter}`}>
              Remove
            </Button>
          )}
        </div>
      </div>
      {making && (
        <NewCombinationDialog
          name=""
          onMade={({ id }) => onRow({ ...row, combinationId: id, leftOut: [] })}
          onClose={() => setMaking(false)}
        />
      )}
    </fieldset>
  );
}
