import { useMutation } from '@tanstack/react-query';
import { useNavigate } from '@tanstack/react-router';
import { type FormEvent, useState } from 'react';
import type { LikeReport } from '../../api/edge.ts';
import { bookChanged } from '../../api/query-client.ts';
import { sendJson } from '../../api/request.ts';
import { Button } from '../../parts/Button.tsx';
import { Dialog, DialogActions } from '../../parts/Dialog.tsx';
import { Fields, SelectField, TextField } from '../../parts/Field.tsx';
import { Trouble } from '../../parts/Trouble.tsx';
import { CarriedFields } from './CarriedFields.tsx';
import { CombinationField } from './CombinationField.tsx';
import { type FileDetails, importDetails, startingDetails, thisMinute } from './file-details.ts';
import { BesideBefore } from './Marked.tsx';
import { MoreFields } from './MoreFields.tsx';
import { OccasionFields } from './OccasionFields.tsx';
import { WeatherFields } from './WeatherFields.tsx';

const ORIGINS = ['remembered', 'read off a picture', 'data sheet', 'measured', 'not stated'];

/** A pull of which only its peaks are known: printed, remembered, or read off a picture. */
export function SummaryDialog({
  combinationId,
  like,
  isNew,
  onClose,
}: {
  combinationId: string;
  like: LikeReport | null;
  /** It was made just now, like that one. */
  isNew: boolean;
  onClose: () => void;
}) {
  const navigate = useNavigate();
  const [started] = useState(() => summaryStart(like, combinationId, isNew));
  const [details, setDetails] = useState<FileDetails>(started);
  const [peaks, setPeaks] = useState({ peakPower: '', peakPowerRpm: '', peakTorque: '', peakTorqueRpm: '' });
  const [origin, setOrigin] = useState(isNew ? 'measured' : 'remembered');
  const set = (change: Partial<FileDetails>) => setDetails({ ...details, ...change });

  const add = useMutation({
    mutationFn: () => {
      const { mapping: _, ...said } = importDetails(details, []);
      const known = Object.entries(peaks).filter(([, text]) => text.trim() !== '');
      return sendJson<{ id: string }>('POST', '/pulls', {
        ...said,
        summary: Object.fromEntries(known),
        origin,
      });
    },
    onSuccess: async ({ id }) => {
      await bookChanged();
      await navigate({ to: '/pulls/$id', params: { id } });
    },
  });

  function submit(event: FormEvent) {
    event.preventDefault();
    add.mutate();
  }

  const peak = (name: keyof typeof peaks, label: string, placeholder: string, first = false) => (
    <TextField
      label={label}
      placeholder={placeholder}
      value={peaks[name]}
      autoFocus={first}
      onChange={(event) => setPeaks({ ...peaks, [name]: event.target.value })}
    />
  );

  return (
    <Dialog title="A pull without a file" open onClose={onClose} wide>
      <form onSubmit={submit} style={{ display: 'contents' }}>
        <p>It is kept with where it comes from, and has no curve. What is not known stays blank.</p>
        <BesideBefore before={like && { words: `in ${like.like.name}`, details: alikeIn(started) }}>
          <Fields>
            {peak('peakPower', 'Highest power', '328 hp', true)}
            {peak('peakPowerRpm', 'Speed of the highest power', '6400 rpm')}
            {peak('peakTorque', 'Highest torque', '301 lb-ft')}
            {peak('peakTorqueRpm', 'Speed of the highest torque', '4900 rpm')}
          </Fields>
          <Fields>
            <TextField
              label="Name"
              required
              value={details.name}
              onChange={(event) => set({ name: event.target.value })}
            />
            <CombinationField
              combinationId={details.combinationId}
              onCombination={(id) => set({ combinationId: id })}
            />
            <SelectField
              label="The figures are"
              value={origin}
              onChange={(event) => setOrigin(event.target.value)}
              options={ORIGINS.map((value) => ({ value, text: value }))}
            />
            <OccasionFields occasion={details} onOccasion={set} />
          </Fields>
          <WeatherFields weather={details} onWeather={set} />
          <CarriedFields carried={details} onCarried={set} />
          <MoreFields details={details} onDetails={set} />
        </BesideBefore>
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

/** A remembered peak carries nobody knows what; only of one made just now more is alike. */
function summaryStart(like: LikeReport | null, combinationId: string, isNew: boolean): FileDetails {
  const from = isNew ? like : null;
  const start = startingDetails({ like: from?.fields ?? null, combinationId });
  if (from === null) {
    const before = like?.fields.combinationId ?? '';
    return { ...start, combinationId: combinationId || before, standard: 'unknown' };
  }
  return { ...start, recordedAt: thisMinute(new Date()) };
}

function alikeIn({ name: _, recordedAt: __, note: ___, events: ____, ...shared }: FileDetails) {
  return shared;
}
