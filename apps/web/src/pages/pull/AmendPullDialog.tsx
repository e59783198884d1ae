import type { PullPage } from '@pullbook/views';
import { useQuery } from '@tanstack/react-query';
import { type FormEvent, useState } from 'react';
import { combinationsQuestion } from '../../api/questions.ts';
import { Button } from '../../parts/Button.tsx';
import { Dialog, DialogActions } from '../../parts/Dialog.tsx';
import { Fields, SelectField, TextField } from '../../parts/Field.tsx';
import { Trouble } from '../../parts/Trouble.tsx';
import { CarriedFields } from '../add-pulls/CarriedFields.tsx';
import { type FileDetails, importDetails, NO_DETAILS } from '../add-pulls/file-details.ts';
import { MoreFields } from '../add-pulls/MoreFields.tsx';
import { OccasionFields } from '../add-pulls/OccasionFields.tsx';
import { WeatherFields } from '../add-pulls/WeatherFields.tsx';
import { useAmendPull } from './amend-pull.ts';

const STAYS = '';

/** Mends what was written down about a pull. What is left blank stays; the channels are never touched. */
export function AmendPullDialog({ page, onClose }: { page: PullPage; onClose: () => void }) {
  const combinations = useQuery(combinationsQuestion());
  const [details, setDetails] = useState<FileDetails>(NO_DETAILS);
  const [carriedChanged, setCarriedChanged] = useState(false);
  const [reason, setReason] = useState('');
  const set = (change: Partial<FileDetails>) => setDetails({ ...details, ...change });

  const amend = useAmendPull(page.id);

  function submit(event: FormEvent) {
    event.preventDefault();
    const { mapping: _, combinationId, weather, carried, ...said } = importDetails(details, []);
    const amendment = {
      ...said,
      ...(combinationId === null ? {} : { combinationId }),
      ...(weather === null ? {} : { weather }),
      ...(carriedChanged ? { carried } : {}),
    };
    amend.mutate({ amendment, reason }, { onSuccess: onClose });
  }

  return (
    <Dialog title={`Amend ${page.name}`} open onClose={onClose} wide>
      <form onSubmit={submit} style={{ display: 'contents' }}>
        <p>
          What you leave blank stays as it is. What was measured is never altered; the log keeps both sides.
        </p>
        <Fields>
          <TextField
            label="Name"
            placeholder={page.name}
            value={details.name}
            onChange={(event) => set({ name: event.target.value })}
          />
          <SelectField
            label="Combination"
            value={details.combinationId}
            onChange={(event) => set({ combinationId: event.target.value })}
            options={[
              { value: STAYS, text: 'Stays as it is' },
              ...(combinations.data ?? []).map((one) => ({
                value: one.id,
                text: `${one.name} · ${one.engineName}`,
              })),
            ]}
          />
          <OccasionFields occasion={details} onOccasion={set} />
        </Fields>
        <WeatherFields weather={details} onWeather={set} />
        <CarriedFields
          carried={details}
          stays={{ now: !carriedChanged, onStays: () => setCarriedChanged(false) }}
          onCarried={(change) => {
            setCarriedChanged(true);
            set(change);
          }}
        />
        <MoreFields details={details} onDetails={set} stays />
        <TextField
          label="Reason"
          help="“barometer read again from the log book”. It stands in the log."
          required
          value={reason}
          onChange={(event) => setReason(event.target.value)}
        />
        <Trouble of={amend.error} />
        <DialogActions>
          <Button look="main" type="submit" isDisabled={amend.isPending}>
            Keep the amendment
          </Button>
          <Button onPress={onClose}>Cancel</Button>
        </DialogActions>
      </form>
    </Dialog>
  );
}
