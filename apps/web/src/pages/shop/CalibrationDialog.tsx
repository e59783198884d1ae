import type { CellReport, InstrumentReport } from '@pullbook/workshop';
import { type FormEvent, useState } from 'react';
import { useCellAct } from '../../api/shop.ts';
import { Dialog } from '../../parts/Dialog.tsx';
import { Fields, TextField } from '../../parts/Field.tsx';
import { KeepEnd } from '../../parts/KeepEnd.tsx';

const BLANK = { day: '', validUntil: '', how: '', found: '', by: '' };

/** Notes that an instrument was held against a reference. */
export function CalibrationDialog({
  cell,
  instrument,
  onClose,
}: {
  cell: CellReport;
  instrument: InstrumentReport;
  onClose: () => void;
}) {
  const [typed, setTyped] = useState(BLANK);
  const act = useCellAct();
  const set = (change: Partial<typeof BLANK>) => setTyped({ ...typed, ...change });

  function submit(event: FormEvent) {
    event.preventDefault();
    const path = `/cells/${cell.id}/instruments/${instrument.id}/calibrations`;
    act.mutate({ path, body: typed, stamp: cell.stamp }, { onSuccess: onClose });
  }

  return (
    <Dialog title={`${instrument.name}: calibrated`} open onClose={onClose}>
      <form onSubmit={submit} style={{ display: 'contents' }}>
        <Fields>
          <TextField
            label="Day"
            type="date"
            required
            value={typed.day}
            onChange={(event) => set({ day: event.target.value })}
          />
          <TextField
            label="Valid until"
            type="date"
            help="Blank: nobody said; then it is asked about after 30 days (common practice)."
            value={typed.validUntil}
            onChange={(event) => set({ validUntil: event.target.value })}
          />
          <TextField
            label="How"
            help="“six dead weights up and down, arm 0.75 m”"
            value={typed.how}
            onChange={(event) => set({ how: event.target.value })}
          />
          <TextField
            label="What it showed"
            help="“span +0.2 %, zero 0.4 N·m”"
            value={typed.found}
            onChange={(event) => set({ found: event.target.value })}
          />
          <TextField label="By" value={typed.by} onChange={(event) => set({ by: event.target.value })} />
        </Fields>
        <KeepEnd act={act} onClose={onClose} keep="Keep the calibration" />
      </form>
    </Dialog>
  );
}
