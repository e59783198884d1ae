import type { PullRow } from '@pullbook/views';
import type { Ref } from 'react';
import type { CombinationRow as KnownCombination } from '../../api/edge.ts';
import { Button } from '../../parts/Button.tsx';
import { SelectField, TextField } from '../../parts/Field.tsx';
import { PullTicks } from '../../parts/PullTicks.tsx';
import { TakenApartField } from '../../parts/TakenApartField.tsx';
import styles from './change-trial.module.css';
import type { CombinationRow } from './combination-rows.ts';

/** One combination of the trial: which, its name on the chart, its place. */
export function CombinationRowFields({
  letter,
  isBaseline,
  row,
  combinations,
  taken,
  pulls,
  note,
  nameField,
  onRow,
  onMoveUp,
  onRemove,
}: {
  letter: string;
  isBaseline: boolean;
  row: CombinationRow;
  combinations: readonly KnownCombination[];
  /** Combinations that stand in other rows. */
  taken: readonly string[];
  /** Pulls that may join with it; none for a combination that is in the trial already. */
  pulls: readonly PullRow[];
  note: string;
  nameField: Ref<HTMLInputElement>;
  onRow: (row: CombinationRow) => void;
  onMoveUp: (() => void) | null;
  onRemove: (() => void) | null;
}) {
  return (
    <fieldset className={styles.row}>
      <legend className="unseen">Combination {letter}</legend>
      <span className={styles.letter} aria-hidden="true">
        {letter}
      </span>
      <div className={styles.body}>
        <div className={styles.fields}>
          <SelectField
            label="Combination"
            required
            value={row.combinationId}
            onChange={(event) => onRow({ ...row, combinationId: event.target.value, pullIds: [] })}
            options={[
              { value: '', text: 'Choose …' },
              ...combinations
                .filter((one) => one.id === row.combinationId || !taken.includes(one.id))
                .map((one) => ({ value: one.id, text: `${one.name} · ${one.engineName}` })),
            ]}
          />
          <TextField
            ref={nameField}
            label="On the chart as"
            maxLength={40}
            value={row.shortName}
            onChange={(event) => onRow({ ...row, shortName: event.target.value })}
          />
          {!isBaseline && (
            <TakenApartField value={row.takenApart} onSay={(takenApart) => onRow({ ...row, takenApart })} />
          )}
        </div>
        {note !== '' && <p className={styles.note}>{note}</p>}
        {pulls.length > 0 && (
          <PullTicks
            legend={`Pulls of ${letter} to count`}
            pulls={pulls}
            ticked={(id) => row.pullIds.includes(id)}
            onTick={(id, isTicked) =>
              onRow({
                ...row,
                pullIds: isTicked ? [...row.pullIds, id] : row.pullIds.filter((other) => other !== id),
              })
            }
          />
        )}
        <div className={styles.acts}>
          {onMoveUp !== null && (
            <Button small look="quiet" aria-label={`Move up ${letter}`} onPress={onMoveUp}>
              Move up
            </Button>
          )}
          {onRemove !== null && (
            <Button small look="quiet" aria-label={`Remove ${letter}`} onPress={onRemove}>
              Remove
            </Button>
          )}
        </div>
      </div>
    </fieldset>
  );
}
