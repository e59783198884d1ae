import type { TrialPage } from '@pullbook/views';
import { useNavigate } from '@tanstack/react-router';
import { type FormEvent, useState } from 'react';
import { ActTrouble } from '../../parts/ActTrouble.tsx';
import { Button } from '../../parts/Button.tsx';
import { SelectField, TextField } from '../../parts/Field.tsx';
import { Trouble } from '../../parts/Trouble.tsx';
import type { TrialSearch } from '../../search.ts';
import { speedFrom } from '../../typed/speed-from.ts';
import { STANDARDS } from '../../view/standards.ts';
import { useChangeTrial } from './change-trial.ts';
import styles from './trial.module.css';

/** By which standard and on which window the trial is looked at. It stands in the address; keeping it is an act. */
export function TrialSettings({ page, look }: { page: TrialPage; look: TrialSearch }) {
  const navigate = useNavigate({ from: '/trials/$id' });
  const { correction, averagesWindowRpm, commonWindowRpm } = page.settings;
  const shown = averagesWindowRpm ?? commonWindowRpm;
  const [from, setFrom] = useState(String(shown?.[0] ?? ''));
  const [to, setTo] = useState(String(shown?.[1] ?? ''));
  const [windowFault, setWindowFault] = useState<Error | null>(null);
  const change = useChangeTrial(page.id);

  const lookBy = (search: TrialSearch) => navigate({ search, replace: true, resetScroll: false });

  function showWindow(event: FormEvent) {
    event.preventDefault();
    const [low, high] = [speedFrom(from), speedFrom(to)];
    if (!(low > 0 && high > low)) {
      setWindowFault(
        new Error(`The window needs two engine speeds in rpm, the lower first. It is ${from} to ${to}.`),
      );
      return;
    }
    setWindowFault(null);
    void lookBy({ ...look, from: low, to: high });
  }

  /** By the trial's own standard and window; what the chart shows stays. */
  const lookByItsOwn = () => {
    const { correction: _, from: _from, to: _to, ...shown } = look;
    void lookBy(shown);
  };
  const ownLook = look.correction !== undefined || look.from !== undefined;
  return (
    <>
      <div className={styles.settings}>
        <SelectField
          label="Power and torque by"
          options={[...STANDARDS]}
          value={correction}
          onChange={(event) =>
            void lookBy({ ...look, correction: event.target.value as TrialSearch['correction'] })
          }
        />
        <form className={styles.window} onSubmit={showWindow}>
          <TextField
            label="Averages from"
            inputMode="numeric"
            value={from}
            onChange={(event) => setFrom(event.target.value)}
          />
          <TextField
            label="to, rpm"
            inputMode="numeric"
            value={to}
            onChange={(event) => setTo(event.target.value)}
          />
          <Button type="submit">Show</Button>
        </form>
        {ownLook && (
          <>
            <Button
              look="quiet"
              onPress={() =>
                change.mutate(
                  {
                    correction,
                    averagesWindowRpm:
                      look.from === undefined || look.to === undefined
                        ? averagesWindowRpm
                        : [look.from, look.to],
                    reason: 'standard and window kept from the trial page',
                  },
                  { onSuccess: lookByItsOwn },
                )
              }
            >
              Keep for this trial
            </Button>
            <Button look="quiet" onPress={lookByItsOwn}>
              Reset
            </Button>
          </>
        )}
        {!ownLook && averagesWindowRpm !== null && commonWindowRpm !== null && (
          <Button
            look="quiet"
            onPress={() =>
              change.mutate({ averagesWindowRpm: null, reason: 'averages over the common window again' })
            }
          >
            Back to the common window
          </Button>
        )}
      </div>
      <Trouble of={windowFault} />
      <ActTrouble act={change} onDone={() => void lookBy({})} onTheirs={() => void lookBy({})} />
    </>
  );
}
