import type { TrialPage } from '@pullbook/views';
import { useQuery } from '@tanstack/react-query';
import { type FormEvent, useRef, useState } from 'react';
import { combinationsQuestion, pullsOfQuestion } from '../../api/questions.ts';
import { useLooked } from '../../api/use-looked.ts';
import { Button } from '../../parts/Button.tsx';
import { Dialog } from '../../parts/Dialog.tsx';
import { Choice, TextField } from '../../parts/Field.tsx';
import { KeepEnd } from '../../parts/KeepEnd.tsx';
import { Trouble } from '../../parts/Trouble.tsx';
import { useViewChoices } from '../../view/view-choices.ts';
import { CombinationRowFields } from './CombinationRowFields.tsx';
import styles from './change-trial.module.css';
import { useChangeTrial } from './change-trial.ts';
import {
  type CombinationRow,
  combinationsDiffer,
  movedUp,
  rowsOf,
  takenApartOf,
  withBlankRow,
} from './combination-rows.ts';

/** As many as there are colours with dashes. */
const MOST_COMBINATIONS = 8;

/** Changes what a trial asks and what it is about, with a reason. No pull is altered by it. */
export function ChangeTrialDialog({ page, onClose }: { page: TrialPage; onClose: () => void }) {
  const combinations = useQuery(combinationsQuestion());
  const [question, setQuestion] = useState(page.question);
  const [rows, setRows] = useState(() => rowsOf(page));
  const [kind, setKind] = useState<'comparison' | 'survey'>(page.settings.kind);
  const [reason, setReason] = useState('');
  const change = useChangeTrial(page.id);
  const nameFields = useRef(new Map<number, HTMLInputElement>());

  const looked = useLooked('trial', page.id);
  const joiningIds = rows
    .map(({ combinationId }) => combinationId)
    .filter((id) => id !== '' && !page.combinations.some((one) => one.id === id));
  const pulls = useQuery(pullsOfQuestion({ combination: joiningIds }, useViewChoices()));

  const inTrial = new Set(page.combinations.map((one) => one.id));
  const leaving = page.combinations.filter((one) => !rows.some((row) => row.combinationId === one.id));
  const isPlanned = ({ key }: { key: string }) => page.planned.some((one) => one.key === key);
  const setRow = (index: number, row: CombinationRow) => setRows(rows.with(index, row));
  // The row that moved or came has the hand on it: its name is where the next key goes.
  const focusRow = (row: CombinationRow | undefined) =>
    requestAnimationFrame(() => row !== undefined && nameFields.current.get(row.rowId)?.focus());

  function keep(event: FormEvent) {
    event.preventDefault();
    const joining = rows.flatMap((row) => row.pullIds);
    const changed = {
      ...(question.trim() === page.question ? {} : { question }),
      ...(kind === page.settings.kind ? {} : { kind }),
      ...(combinationsDiffer(page, rows)
        ? {
            combinations: rows.map(({ combinationId, shortName }) => ({ combinationId, shortName })),
            takenApart: takenApartOf(rows),
          }
        : {}),
      ...(joining.length === 0
        ? {}
        : { pulls: joining.map((pullId) => ({ pullId, role: 'counted' as const, reason: null })) }),
    };
    if (Object.keys(changed).length === 0) onClose();
    else change.mutate({ ...changed, reason: reason.trim(), stamp: looked }, { onSuccess: onClose });
  }

  return (
    <Dialog title="Change the trial" open onClose={onClose} wide>
      <form onSubmit={keep} style={{ display: 'contents' }}>
        <TextField
          label="The question"
          required
          value={question}
          onChange={(event) => setQuestion(event.target.value)}
          autoFocus
        />
        <fieldset>
          <legend className="unseen">Kind of trial</legend>
          <Choice
            kind="radio"
            name="kind"
            checked={kind === 'comparison'}
            onChange={() => setKind('comparison')}
          >
            A comparison: the gain is worked out
          </Choice>
          <Choice kind="radio" name="kind" checked={kind === 'survey'} onChange={() => setKind('survey')}>
            A survey: figures side by side, no gain
          </Choice>
        </fieldset>
        <p>In a comparison the first is the baseline: the others are told against it.</p>
        <div>
          {rows.map((row, index) => {
            const joins = row.combinationId !== '' && !inTrial.has(row.combinationId);
            const own = (pulls.data ?? []).filter((pull) => pull.combinationId === row.combinationId);
            return (
              <CombinationRowFields
                key={row.rowId}
                letter={String.fromCharCode(65 + index)}
                isBaseline={index === 0 || kind === 'survey'}
                row={row}
                combinations={combinations.data ?? []}
                taken={rows.map((other) => other.combinationId)}
                pulls={joins ? own : []}
                note={joins ? noteOnPulls(own.length) : ''}
                nameField={(field) => {
                  if (field === null) nameFields.current.delete(row.rowId);
                  else nameFields.current.set(row.rowId, field);
                }}
                onRow={(changed) => setRow(index, changed)}
                onMoveUp={
                  index === 0
                    ? null
                    : () => {
                        setRows(movedUp(rows, index));
                        focusRow(row);
                      }
                }
                onRemove={
                  rows.length > 2
                    ? () => {
                        setRows(rows.toSpliced(index, 1));
                        focusRow(rows[index + 1] ?? rows[index - 1]);
                      }
                    : null
                }
              />
            );
          })}
        </div>
        {rows.length < MOST_COMBINATIONS && (
          <div>
            <Button
              onPress={() => {
                const more = withBlankRow(rows);
                setRows(more);
                focusRow(more.at(-1));
              }}
            >
              One more combination
            </Button>
          </div>
        )}
        {leaving.length > 0 && (
          <p className={styles.note} role="status">
            {leaving.map((one) => one.shortName).join(' and ')} leaves the trial with its pulls. They stay in
            the book.{leaving.some(isPlanned) && ' Pulls planned of it leave the plan: make it anew.'}
          </p>
        )}
        <TextField
          label="Reason"
          help="“asked more exactly”. It stands in the log."
          required
          value={reason}
          onChange={(event) => setReason(event.target.value)}
        />
        <Trouble of={combinations.error ?? pulls.error} />
        <KeepEnd act={change} onClose={onClose} keep="Keep the change" />
      </form>
    </Dialog>
  );
}

function noteOnPulls(pulls: number): string {
  return pulls === 0
    ? 'No pull of it yet: the trial will say what is missing.'
    : 'Tick its pulls that are to count; more can be taken in later.';
}
