import type { CellReport, InstrumentReport } from '@pullbook/workshop';
import { type FormEvent, useState } from 'react';
import { useCellAct } from '../../api/shop.ts';
import { Dialog } from '../../parts/Dialog.tsx';
import { TextField } from '../../parts/Field.tsx';
import { KeepEnd } from '../../parts/KeepEnd.tsx';

/** Takes an instrument out of a cell that it left. */
export function TakeOutDialog({
  cell,
  instrument,
  onClose,
}: {
  cell: CellReport;
  instrument: InstrumentReport;
  onClose: () => void;
}) {
  const [reason, setReason] = useState('');
  const act = useCellAct();

  function submit(event: FormEvent) {
    event.preventDefault();
    const path = `/cells/${cell.id}/instruments/${instrument.id}/take-out`;
    act.mutate({ path, body: { reason }, stamp: cell.stamp }, { onSuccess: onClose });
  }

  return (
    <Dialog title={`Take ${instrument.name} out of ${cell.name}`} open onClose={onClose}>
      <form onSubmit={submit} style={{ display: 'contents' }}>
        <p>
          Pulls made with it lose sight of its calibrations; the history keeps them. If it was only calibrated
          anew, note that instead.
        </p>
        <TextField
          label="Reason"
          required
          value={reason}
          onChange={(event) => setReason(event.target.value)}
          autoFocus
        />
        <KeepEnd act={act} onClose={onClose} keep="Take it out" />
      </form>
    </Dialog>
  );
}
