import type { CorrectionId } from '@pullbook/core/air';
import { useMutation, useQuery } from '@tanstack/react-query';
import { useNavigate } from '@tanstack/react-router';
import { type FormEvent, useState } from 'react';
import type { CombinationRow } from '../../api/edge.ts';
import { bookChanged } from '../../api/query-client.ts';
import { pullsOfQuestion } from '../../api/questions.ts';
import { sendJson } from '../../api/request.ts';
import { Button, ButtonLink } from '../../parts/Button.tsx';
import { Panel } from '../../parts/Card.tsx';
import { DialogActions } from '../../parts/Dialog.tsx';
import { Choice, SelectField, TextField } from '../../parts/Field.tsx';
import { Trouble } from '../../parts/Trouble.tsx';
import { STANDARDS } from '../../view/standards.ts';
import { useViewChoices } from '../../view/view-choices.ts';
import { takenApartOf } from '../trial/combination-rows.ts';
import { CombinationFields } from './CombinationFields.tsx';
import { EMPTY_ROW, type TrialRow } from './first-rows.ts';
import styles from './start-trial.module.css';

/** Keys run from A, the baseline, to H: as many as there are colours with dashes. */
const MOST_COMBINATIONS = 8;

export function StartTrialForm({
  combinations,
  first,
}: {
  combinations: CombinationRow[];
  first: TrialRow[];
}) {
  const navigate = useNavigate();
  const [question, setQuestion] = useState('');
  const [kind, setKind] = useState<'comparison' | 'survey'>('comparison');
  const [rows, setRows] = useState(first);
  const combination = rows.map(({ combinationId }) => combinationId).filter((id) => id !== '');
  const known = useQuery(pullsOfQuestion({ combination }, useViewChoices()));
  const pulls = known.data ?? [];
  const [correction, setCorrection] = useState<CorrectionId>(useViewChoices().correction);

  const start = useMutation({
    mutationFn: () =>
      sendJson<{ id: string }>('POST', '/trials', {
        question,
        kind,
        combinations: rows.map(({ combinationId, shortName }) => ({ combinationId, shortName })),
        takenApart: kind === 'survey' ? {} : takenApartOf(rows),
        pullIds: rows.flatMap((row) =>
          pulls
            .filter((pull) => pull.combinationId === row.combinationId && !row.leftOut.includes(pull.id))
            .map((pull) => pull.id),
        ),
        correction,
      }),
    onSuccess: async ({ id }) => {
      await bookChanged();
      await navigate({ to: '/trials/$id', params: { id } });
    },
  });

  const setRow = (index: number, row: TrialRow) => setRows(rows.with(index, row));

  function submit(event: FormEvent) {
    event.preventDefault();
    start.mutate();
  }

  return (
    <Panel>
      <form className={styles.form} onSubmit={submit}>
        <div className={styles.question}>
          <TextField
            label="What do you want to find out?"
            help="One thing, as you would ask it: “What does this cam add at the same pulley?”"
            required
            value={question}
            onChange={(event) => setQuestion(event.target.value)}
            autoFocus
          />
        </div>
        <fieldset>
          <legend className="unseen">Kind of trial</legend>
          <div className={styles.kinds}>
            <Choice
              kind="radio"
              name="kind"
              checked={kind === 'comparison'}
              onChange={() => setKind('comparison')}
              help="One engine, one change: the gain is worked out."
            >
              A comparison
            </Choice>
            <Choice
              kind="radio"
              name="kind"
              checked={kind === 'survey'}
              onChange={() => setKind('survey')}
              help="Different engines side by side: common figures, no gain."
            >
              A survey
            </Choice>
          </div>
        </fieldset>
        <div>
          {rows.map((row, index) => (
            <CombinationFields
              // biome-ignore lint/suspicious/noArrayIndexKey: a row has no other name than its letter, and that is its place
              key={index}
              letter={String.fromCharCode(65 + index)}
              isBaseline={index === 0 && kind === 'comparison'}
              comesFromBaseline={index > 0 && kind === 'comparison'}
              row={row}
              taken={rows.map((other) => other.combinationId)}
              pulls={pulls}
              combinations={combinations}
              onRow={(changed) => setRow(index, changed)}
              onRemove={rows.length > 2 ? () => setRows(rows.toSpliced(index, 1)) : null}
            />
          ))}
          {rows.length < MOST_COMBINATIONS && (
            <Button onPress={() => setRows([...rows, EMPTY_ROW])}>One more combination</Button>
          )}
        </div>
        <SelectField
          label="Power and torque by"
          help="The standard can be changed on the trial at any time; the pulls stay as measured."
          value={correction}
          options={[...STANDARDS]}
          onChange={(event) => setCorrection(event.target.value as CorrectionId)}
        />
        <Trouble of={known.error ?? start.error} />
        <DialogActions>
          <Button
            look="main"
            type="submit"
            isDisabled={start.isPending || known.isPlaceholderData || known.data === undefined}
          >
            Start the trial
          </Button>
          <ButtonLink to="/">Cancel</ButtonLink>
        </DialogActions>
      </form>
    </Panel>
  );
}
