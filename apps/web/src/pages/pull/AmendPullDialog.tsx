import type { PullPage } from '@pullbook/views';
import { useQuery } from '@tanstack/react-query';
import { type FormEvent, useState } from 'react';
import type { WrittenFields } from '../../api/edge.ts';
import { writtenQuestion } from '../../api/questions.ts';
import { useLooked } from '../../api/use-looked.ts';
import { Dialog } from '../../parts/Dialog.tsx';
import { Fields, TextField } from '../../parts/Field.tsx';
import { KeepEnd } from '../../parts/KeepEnd.tsx';
import { Trouble, Waiting } from '../../parts/Trouble.tsx';
import { useViewChoices } from '../../view/view-choices.ts';
import { CarriedFields } from '../add-pulls/CarriedFields.tsx';
import { CombinationField } from '../add-pulls/CombinationField.tsx';
import { type FileDetails, NO_DETAILS } from '../add-pulls/file-details.ts';
import { BesideBefore, Marked } from '../add-pulls/Marked.tsx';
import { MoreFields } from '../add-pulls/MoreFields.tsx';
import { OccasionFields } from '../add-pulls/OccasionFields.tsx';
import { WeatherFields } from '../add-pulls/WeatherFields.tsx';
import { useAmendPull } from './amend-pull.ts';
import { amendmentFrom } from './amendment-from.ts';

/** Mends what was written down about a pull. The form shows what stands; the channels are never touched. */
export function AmendPullDialog({ page, onClose }: { page: PullPage; onClose: () => void }) {
  const written = useQuery(writtenQuestion(page.id, useViewChoices()));
  return (
    <Dialog title={`Amend ${page.name}`} open onClose={onClose} wide>
      {written.data === undefined ? (
        written.isPending ? (
          <Waiting />
        ) : (
          <Trouble of={written.error} />
        )
      ) : (
        <AmendForm page={page} fields={written.data.fields} onClose={onClose} />
      )}
    </Dialog>
  );
}

function AmendForm({
  page,
  fields,
  onClose,
}: {
  page: PullPage;
  fields: WrittenFields;
  onClose: () => void;
}) {
  // As the book was when the form opened: only what the person changes from here on is sent.
  const [stands] = useState<FileDetails>(() => ({
    ...NO_DETAILS,
    ...fields,
    recordedAt: fields.recordedAt.slice(0, 16),
  }));
  const [details, setDetails] = useState(stands);
  const [reason, setReason] = useState('');
  const set = (change: Partial<FileDetails>) => setDetails({ ...details, ...change });
  const amend = useAmendPull(page.id);
  const looked = useLooked('pull', page.id);

  function submit(event: FormEvent) {
    event.preventDefault();
    const amendment = amendmentFrom(stands, details);
    amend.mutate({ amendment, reason, stamp: looked }, { onSuccess: onClose });
  }

  return (
    <form onSubmit={submit} style={{ display: 'contents' }}>
      <p>
        A field you empty is not known any more. What was measured is never altered; the log keeps both sides.
      </p>
      <BesideBefore before={{ words: 'stands in the book', details: stands }}>
        <Fields>
          <Marked name="name" value={details.name}>
            {(help) => (
              <TextField
                label="Name"
                required
                value={details.name}
                onChange={(event) => set({ name: event.target.value })}
                {...help}
              />
            )}
          </Marked>
          <CombinationField
            combinationId={details.combinationId}
            onCombination={(combinationId) => set({ combinationId })}
          />
          <OccasionFields occasion={details} onOccasion={set} />
        </Fields>
        <WeatherFields weather={details} onWeather={set} />
        <CarriedFields carried={details} onCarried={set} />
        <MoreFields details={details} onDetails={set} mends />
      </BesideBefore>
      <TextField
        label="Reason"
        help="“barometer read again from the log book”. It stands in the log."
        required
        value={reason}
        onChange={(event) => setReason(event.target.value)}
      />
      <KeepEnd act={amend} onClose={onClose} keep="Keep the amendment" />
    </form>
  );
}
