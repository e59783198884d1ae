import type { PullPage, ShownRemark } from '@pullbook/views';
import { type FormEvent, useState } from 'react';
import { useLooked } from '../../api/use-looked.ts';
import { ActTrouble } from '../../parts/ActTrouble.tsx';
import { Button } from '../../parts/Button.tsx';
import { Dialog, DialogActions } from '../../parts/Dialog.tsx';
import { Choice, Fields, TextField } from '../../parts/Field.tsx';
import { Remarks } from '../../parts/Remarks.tsx';
import { useViewChoices } from '../../view/view-choices.ts';
import { useAmendPull } from './amend-pull.ts';
import { LagFields } from './LagFields.tsx';
import styles from './pull.module.css';
import { formOf, type TreatmentForm, treatmentFrom } from './treatment-form.ts';

/** Changes how a pull is read: an amendment with a reason. The recorded rows stay as they are. */
export function TreatmentDialog({ page, onClose }: { page: PullPage; onClose: () => void }) {
  const { decimalMark } = useViewChoices();
  const [form, setForm] = useState(() => formOf(page.treatment, decimalMark));
  const [reason, setReason] = useState('');
  const [faults, setFaults] = useState<ShownRemark[]>([]);
  const amend = useAmendPull(page.id);
  const looked = useLooked('pull', page.id);
  const set = (change: Partial<TreatmentForm>) => setForm({ ...form, ...change });

  function keep(event: FormEvent) {
    event.preventDefault();
    const { treatment, faults } = treatmentFrom(form, page.channelMeanings);
    setFaults(faults);
    if (treatment !== null)
      amend.mutate({ amendment: { treatment }, reason, stamp: looked }, { onSuccess: onClose });
  }

  return (
    <Dialog title={`How ${page.name} is read`} open onClose={onClose} wide>
      <form onSubmit={keep} style={{ display: 'contents' }}>
        <p>
          What was recorded is never altered. The curve, its peaks and every trial with it are drawn anew.
        </p>
        <fieldset>
          <legend className={styles.legend}>Counted</legend>
          <Choice
            kind="radio"
            name="window"
            checked={!form.windowByHand}
            onChange={() => set({ windowByHand: false })}
          >
            The sweep as found
          </Choice>
          <Choice
            kind="radio"
            name="window"
            checked={form.windowByHand}
            onChange={() => set({ windowByHand: true })}
          >
            A window set by hand
          </Choice>
          {form.windowByHand && (
            <Fields>
              <TextField
                label="From, rpm"
                inputMode="numeric"
                placeholder={String(page.cursor?.at[0] ?? 3000)}
                required
                value={form.from}
                onChange={(event) => set({ from: event.target.value })}
              />
              <TextField
                label="To, rpm"
                inputMode="numeric"
                placeholder={String(page.cursor?.at.at(-1) ?? 6500)}
                required
                value={form.to}
                onChange={(event) => set({ to: event.target.value })}
              />
            </Fields>
          )}
        </fieldset>
        <Fields wide>
          <TextField
            label="Means over, rpm"
            help="Blank: adapted to the sampling, 50 rpm where the rows allow it."
            inputMode="numeric"
            placeholder="adapted"
            value={form.binWidth}
            onChange={(event) => set({ binWidth: event.target.value })}
          />
          <Choice
            kind="checkbox"
            checked={form.addInertia}
            onChange={(event) => set({ addInertia: event.target.checked })}
            help="Needs the moment of inertia, and figures that it is not in already."
          >
            Add the torque that the sweep hides
          </Choice>
        </Fields>
        <LagFields meanings={page.channelMeanings} lags={form.lags} onLags={(lags) => set({ lags })} />
        <TextField
          label="Reason"
          help="“wideband probe sits 2 m down the pipe”. It stands in the log."
          required
          value={reason}
          onChange={(event) => setReason(event.target.value)}
        />
        {faults.length > 0 ? (
          <div role="alert">
            <Remarks remarks={faults} />
          </div>
        ) : (
          <ActTrouble act={amend} onDone={onClose} onTheirs={onClose} />
        )}
        <DialogActions>
          <Button look="main" type="submit" isDisabled={amend.isPending}>
            Read it so
          </Button>
          <Button onPress={onClose}>Cancel</Button>
        </DialogActions>
      </form>
    </Dialog>
  );
}
