import type { TrialPage } from '@pullbook/views';
import { useMutation } from '@tanstack/react-query';
import { type FormEvent, useState } from 'react';
import { bookChanged } from '../../api/query-client.ts';
import { sendJson } from '../../api/request.ts';
import { Button } from '../../parts/Button.tsx';
import { Dialog, DialogActions } from '../../parts/Dialog.tsx';
import { Fields, SelectField, TextField } from '../../parts/Field.tsx';
import { OneOf } from '../../parts/OneOf.tsx';
import { Trouble } from '../../parts/Trouble.tsx';
import styles from './predictions.module.css';

type What = 'gain' | 'peakPower';

/** What is expected of a combination that is not pulled yet, with a band and what it rests on. */
export function PredictDialog({ page, onClose }: { page: TrialPage; onClose: () => void }) {
  const { open } = page.predictions;
  const [key, setKey] = useState(open[0]!.key);
  const isBaseline = open.find((one) => one.key === key)?.isBaseline === true;
  const [chosen, setChosen] = useState<What>('gain');
  const what = isBaseline ? 'peakPower' : chosen;
  const [value, setValue] = useState('');
  const [low, setLow] = useState('');
  const [high, setHigh] = useState('');
  const [basis, setBasis] = useState('');
  const predict = useMutation({
    mutationFn: () =>
      sendJson<unknown>('POST', `/trials/${encodeURIComponent(page.id)}/predictions`, {
        key,
        [what]: value,
        low,
        high,
        basis,
      }),
    onSuccess: async () => {
      await bookChanged();
      onClose();
    },
  });
  const example = what === 'gain' ? ['3 %', '1 %', '5 %'] : ['520 hp', '500 hp', '540 hp'];

  function keep(event: FormEvent) {
    event.preventDefault();
    predict.mutate();
  }

  return (
    <Dialog title="Predict before the pull" open onClose={onClose}>
      <form className={styles.form} onSubmit={keep}>
        <SelectField
          label="Combination"
          value={key}
          options={open.map((one) => ({ value: one.key, text: `${one.key}, ${one.shortName}` }))}
          onChange={(event) => setKey(event.target.value)}
        />
        {!isBaseline && (
          <OneOf<What>
            title="What you expect"
            chosen={chosen}
            options={[
              { value: 'gain', text: 'Gain of average power' },
              { value: 'peakPower', text: 'Peak power' },
            ]}
            onChoose={setChosen}
          />
        )}
        <TextField
          label={what === 'gain' ? 'Gain' : 'Peak power'}
          placeholder={example[0]}
          value={value}
          onChange={(event) => setValue(event.target.value)}
        />
        <Fields>
          <TextField
            label="At least"
            placeholder={example[1]}
            value={low}
            onChange={(event) => setLow(event.target.value)}
          />
          <TextField
            label="At most"
            placeholder={example[2]}
            value={high}
            onChange={(event) => setHigh(event.target.value)}
          />
        </Fields>
        <TextField
          label="What it rests on"
          help="A guess is fair, if it says so. Once kept it is not altered any more; a slip is undone, while there is no pull."
          placeholder="flow bench, 4 % more"
          value={basis}
          onChange={(event) => setBasis(event.target.value)}
        />
        <Trouble of={predict.error} />
        <DialogActions>
          <Button look="main" type="submit" isDisabled={predict.isPending}>
            Keep the prediction
          </Button>
          <Button onPress={onClose}>Cancel</Button>
        </DialogActions>
      </form>
    </Dialog>
  );
}
