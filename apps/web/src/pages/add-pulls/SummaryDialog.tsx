import { useMutation, useQuery } from '@tanstack/react-query';
import { useNavigate } from '@tanstack/react-router';
import { type FormEvent, useState } from 'react';
import { bookChanged } from '../../api/query-client.ts';
import { combinationsQuestion } from '../../api/questions.ts';
import { sendJson } from '../../api/request.ts';
import { Button } from '../../parts/Button.tsx';
import { Dialog, DialogActions } from '../../parts/Dialog.tsx';
import { Fields, SelectField, TextField } from '../../parts/Field.tsx';
import { Trouble } from '../../parts/Trouble.tsx';
import { CarriedFields } from './CarriedFields.tsx';
import { carriedOf, type FileDetails, NO_DETAILS } from './file-details.ts';

const ORIGINS = ['remembered', 'read off a picture', 'data sheet', 'measured', 'not stated'];

/** A pull of which only its peaks are known: printed, remembered, or read off a picture. */
export function SummaryDialog({ combinationId, onClose }: { combinationId: string; onClose: () => void }) {
  const combinations = useQuery(combinationsQuestion());
  const navigate = useNavigate();
  const [details, setDetails] = useState<FileDetails>({ ...NO_DETAILS, combinationId, standard: 'unknown' });
  const [peaks, setPeaks] = useState({ peakPower: '', peakPowerRpm: '', peakTorque: '', peakTorqueRpm: '' });
  const [origin, setOrigin] = useState('remembered');
  const set = (change: Partial<FileDetails>) => setDetails({ ...details, ...change });

  const add = useMutation({
    mutationFn: () =>
      sendJson<{ id: string }>('POST', '/pulls', {
        summary: Object.fromEntries(Object.entries(peaks).filter(([, text]) => text.trim() !== '')),
        origin,
        name: details.name.trim(),
        combinationId: details.combinationId === '' ? null : details.combinationId,
        carried: carriedOf(details),
      }),
    onSuccess: async ({ id }) => {
      await bookChanged();
      await navigate({ to: '/pulls/$id', params: { id } });
    },
  });

  function submit(event: FormEvent) {
    event.preventDefault();
    add.mutate();
  }

  const peak = (name: keyof typeof peaks, label: string, placeholder: string) => (
    <TextField
      label={label}
      placeholder={placeholder}
      value={peaks[name]}
      onChange={(event) => setPeaks({ ...peaks, [name]: event.target.value })}
    />
  );

  return (
    <Dialog title="A pull without a file" open onClose={onClose} wide>
      <form onSubmit={submit} style={{ display: 'contents' }}>
        <p>It is kept with where it comes from, and has no curve. What is not known stays blank.</p>
        <Fields>
          <TextField
            label="Name"
            required
            value={details.name}
            onChange={(event) => set({ name: event.target.value })}
          />
          <SelectField
            label="Combination"
            value={details.combinationId}
            onChange={(event) => set({ combinationId: event.target.value })}
            options={[
              { value: '', text: 'Not said yet' },
              ...(combinations.data ?? []).map((one) => ({
                value: one.id,
                text: `${one.name} · ${one.engineName}`,
              })),
            ]}
          />
          <SelectField
            label="The figures are"
            value={origin}
            onChange={(event) => setOrigin(event.target.value)}
            options={ORIGINS.map((value) => ({ value, text: value }))}
          />
        </Fields>
        <Fields>
          {peak('peakPower', 'Highest power', '328 hp')}
          {peak('peakPowerRpm', 'Speed of the highest power', '6400 rpm')}
          {peak('peakTorque', 'Highest torque', '301 lb-ft')}
          {peak('peakTorqueRpm', 'Speed of the highest torque', '4900 rpm')}
        </Fields>
        <CarriedFields carried={details} onCarried={set} />
        <Trouble of={add.error} />
        <DialogActions>
          <Button look="main" type="submit" isDisabled={add.isPending}>
            Add this pull
          </Button>
          <Button onPress={onClose}>Cancel</Button>
        </DialogActions>
      </form>
    </Dialog>
  );
}
