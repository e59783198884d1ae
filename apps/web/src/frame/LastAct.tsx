import { useMutation, useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { useState } from 'react';
import { useActs } from '../api/acts.ts';
import type { HistoryStep } from '../api/edge.ts';
import { bookChanged } from '../api/query-client.ts';
import { lastActQuestion, lastErrataQuestion } from '../api/questions.ts';
import { sendJson } from '../api/request.ts';
import { useKey } from '../keys/use-key.ts';
import { Button, Key } from '../parts/Button.tsx';
import { useViewChoices } from '../view/view-choices.ts';
import styles from './last-act.module.css';

/** Takes a step back; `null`: the last one that can be. */
export function useUndo() {
  return useMutation({
    mutationFn: (uid: string | null) => sendJson<HistoryStep>('POST', '/undo', { uid }),
    onSuccess: bookChanged,
  });
}

/**
 * Says what was done last from this page, with its undo, until the next act or until it is put away: it runs by no clock.
 * Ctrl Z does the same from everywhere.
 */
export function LastAct() {
  const acts = useActs();
  const view = useViewChoices();
  const last = useQuery({ ...lastActQuestion(view), enabled: acts > 0 });
  const errata = useQuery({ ...lastErrataQuestion(view), enabled: acts > 0 }).data?.length ?? 0;
  const [putAway, setPutAway] = useState(0);
  const undo = useUndo();
  useKey('undo', () => {
    setPutAway(0);
    undo.mutate(null);
  });
  const step = last.data?.step ?? null;
  const isShown = (acts > putAway && step !== null) || undo.error !== null;
  return (
    <div className={styles.place} role="status" aria-label="Last act">
      {isShown && (
        <div className={styles.act}>
          <p className={styles.words}>
            {undo.error?.message ?? step?.words}
            {undo.error === null && step !== null && step.reason !== '' && (
              <span className={styles.reason}> · {step.reason}</span>
            )}
          </p>
          {errata > 0 && (
            <p className={styles.errata}>
              {errata === 1
                ? 'One publication carries a figure that is no longer so.'
                : `${errata} publications carry figures that are no longer so.`}{' '}
              <Link to="/publications">See what was said</Link>
            </p>
          )}
          <div className={styles.buttons}>
            {undo.error === null && step?.canUndo && (
              <Button onPress={() => undo.mutate(step.uid)} isDisabled={undo.isPending}>
                {step.isUndoing ? 'Do it again' : 'Undo'}
                {!step.isUndoing && <Key>Ctrl Z</Key>}
              </Button>
            )}
            <Link className={styles.link} to="/history">
              History
            </Link>
            <Button
              look="quiet"
              onPress={() => {
                undo.reset();
                setPutAway(acts);
              }}
            >
              Put away
            </Button>
          </div>
        </div>
      )}
    </div>
  );
}
