import type { EvidenceRow, TrialPage } from '@pullbook/views';
import { type FormEvent, useState } from 'react';
import { useLooked } from '../../api/use-looked.ts';
import { Dialog } from '../../parts/Dialog.tsx';
import { Choice, TextField } from '../../parts/Field.tsx';
import { KeepEnd } from '../../parts/KeepEnd.tsx';
import { useChangeTrial } from './change-trial.ts';

/** Rejects or accepts one pull for this trial, with a reason that stays beside it. */
export function RoleDialog({
  page,
  row,
  onClose,
}: {
  page: TrialPage;
  row: EvidenceRow;
  onClose: () => void;
}) {
  const [role, setRole] = useState<EvidenceRow['role']>(row.role === 'counted' ? 'rejected' : 'counted');
  const [reason, setReason] = useState('');
  const change = useChangeTrial(page.id);
  const looked = useLooked('trial', page.id);

  function keep(event: FormEvent) {
    event.preventDefault();
    const words = reason.trim();
    const pull = { pullId: row.pullId, key: row.key, role, reason: words };
    change.mutate(
      { pulls: [pull], reason: `${row.name} ${role}: ${words}`, stamp: looked },
      { onSuccess: onClose },
    );
  }

  return (
    <Dialog title={row.name} open onClose={onClose}>
      <form onSubmit={keep} style={{ display: 'contents' }}>
        <fieldset>
          <legend>In this trial it is</legend>
          <Choice kind="radio" name="role" checked={role === 'counted'} onChange={() => setRole('counted')}>
            counted
          </Choice>
          <Choice
            kind="radio"
            name="role"
            checked={role === 'rejected'}
            onChange={() => setRole('rejected')}
            help="It stays visible with its reason and counts nowhere in this trial."
          >
            rejected
          </Choice>
          <Choice kind="radio" name="role" checked={role === 'warm-up'} onChange={() => setRole('warm-up')}>
            warm-up
          </Choice>
        </fieldset>
        <TextField
          label="Reason"
          help="A stranger reads it beside the pull: “throttle lifted at 5,800 rpm”."
          required
          value={reason}
          onChange={(event) => setReason(event.target.value)}
          autoFocus
        />
        <KeepEnd act={change} onClose={onClose} />
      </form>
    </Dialog>
  );
}
