import { useMutation } from '@tanstack/react-query';
import { type FormEvent, useState } from 'react';
import type { EngineRow } from '../../api/edge.ts';
import { bookChanged } from '../../api/query-client.ts';
import { sendJson } from '../../api/request.ts';
import { ChangeEnd } from '../../parts/ChangeEnd.tsx';
import { Dialog } from '../../parts/Dialog.tsx';
import { Fields, TextArea, TextField } from '../../parts/Field.tsx';

const FIELDS = ['name', 'buildRevision', 'notes'] as const;
type Change = Partial<Record<(typeof FIELDS)[number], string>>;

/** Gives an engine another name, build or note, with a reason. Only what was changed is sent. */
export function EngineDialog({ engine, onClose }: { engine: EngineRow; onClose: () => void }) {
  const { name, buildRevision, notes } = engine;
  const [typed, setTyped] = useState({ name, buildRevision, notes });
  const [reason, setReason] = useState('');
  const set = (change: Change) => setTyped({ ...typed, ...change });
  const act = useMutation({
    mutationFn: (change: Change & { reason: string; stamp?: string | undefined }) =>
      sendJson<{ id: string }>('PATCH', `/engines/${encodeURIComponent(engine.id)}`, change),
    onSuccess: bookChanged,
  });

  function submit(event: FormEvent) {
    event.preventDefault();
    const changed = FIELDS.filter((field) => typed[field] !== engine[field]);
    const change: Change = Object.fromEntries(changed.map((field) => [field, typed[field]]));
    act.mutate({ ...change, reason, stamp: engine.stamp }, { onSuccess: onClose });
  }

  return (
    <Dialog title={`Change ${engine.name}`} open onClose={onClose}>
      <form onSubmit={submit} style={{ display: 'contents' }}>
        <Fields>
          <TextField
            label="Name"
            required
            value={typed.name}
            onChange={(event) => set({ name: event.target.value })}
            autoFocus
          />
          <TextField
            label="Build"
            help="Rebuilt or machined anew: another one, “2”, “line-honed, March”."
            value={typed.buildRevision}
            onChange={(event) => set({ buildRevision: event.target.value })}
          />
        </Fields>
        <TextArea
          label="Notes"
          rows={3}
          value={typed.notes}
          onChange={(event) => set({ notes: event.target.value })}
        />
        <ChangeEnd reason={reason} onReason={setReason} act={act} onClose={onClose} />
      </form>
    </Dialog>
  );
}
