import { formatNumber } from '@pullbook/core/quantity';
import type { PullPage } from '@pullbook/views';
import { type FormEvent, useState } from 'react';
import type { Range } from '../../chart/CursorChart.tsx';
import { ActTrouble } from '../../parts/ActTrouble.tsx';
import { Button } from '../../parts/Button.tsx';
import { TextField } from '../../parts/Field.tsx';
import { useViewChoices } from '../../view/view-choices.ts';
import { useAmendPull } from './amend-pull.ts';
import styles from './pull.module.css';

const ON_THE_CHART = 'window set on the chart';

type Window = PullPage['treatment']['windowRpm'];

/** Keeps a window that was set on the chart: an amendment with a reason, and the way back from it. */
export function SetWindow({
  page,
  wanted,
  onDone,
}: {
  page: PullPage;
  wanted: Range | null;
  onDone: () => void;
}) {
  const { decimalMark } = useViewChoices();
  const amend = useAmendPull(page.id);
  const [reason, setReason] = useState(ON_THE_CHART);
  const [before, setBefore] = useState<{ window: Window } | null>(null);

  const inWords = (window: Window) => {
    if (window === null) return 'the sweep as found';
    const [low, high] = window.map((rpm) => formatNumber(rpm, 0, decimalMark, { thousands: true }));
    return `${low} to ${high} rpm`;
  };

  function count(windowRpm: Window, why: string) {
    const earlier = { window: page.treatment.windowRpm };
    amend.mutate(
      { amendment: { treatment: { ...page.treatment, windowRpm } }, reason: why },
      {
        onSuccess: () => {
          setBefore(earlier);
          setReason(ON_THE_CHART);
          onDone();
        },
      },
    );
  }

  function keep(event: FormEvent) {
    event.preventDefault();
    if (wanted !== null) count([wanted[0], wanted[1]], reason);
  }

  return (
    <>
      {wanted !== null && (
        <form className={styles.setWindow} onSubmit={keep} aria-label="Set the window">
          <p role="status">
            Count only {inWords([wanted[0], wanted[1]])}? Nothing recorded is altered; the curve and every
            trial with it are drawn anew.
          </p>
          <TextField
            label="Reason"
            required
            value={reason}
            onChange={(event) => setReason(event.target.value)}
          />
          <Button look="main" type="submit" isDisabled={amend.isPending}>
            Count only this
          </Button>
          <Button onPress={onDone}>Leave it</Button>
        </form>
      )}
      {wanted === null && (before !== null || page.treatment.windowRpm !== null) && (
        <div className={styles.setWindow}>
          <p role="status">Counted: {inWords(page.treatment.windowRpm)}.</p>
          {before !== null && (
            <Button
              small
              isDisabled={amend.isPending}
              onPress={() => count(before.window, `undone: back to ${inWords(before.window)}`)}
            >
              Undo: back to {inWords(before.window)}
            </Button>
          )}
          {page.treatment.windowRpm !== null && (
            <Button small isDisabled={amend.isPending} onPress={() => count(null, 'window found again')}>
              Find the window again
            </Button>
          )}
        </div>
      )}
      <ActTrouble act={amend} onDone={amend.reset} onTheirs={amend.reset} />
    </>
  );
}
