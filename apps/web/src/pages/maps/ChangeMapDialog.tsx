import type { MapPage } from '@pullbook/views/match';
import { type FormEvent, useState } from 'react';
import type { Stamped } from '../../api/edge.ts';
import { useChangeMap } from '../../api/maps.ts';
import { ChangeEnd } from '../../parts/ChangeEnd.tsx';
import { Dialog } from '../../parts/Dialog.tsx';
import { TextArea, TextField } from '../../parts/Field.tsx';

/** Another name or other notes of a map, with a reason. Its points stay: another measurement is another map. */
export function ChangeMapDialog({ page, onClose }: { page: Stamped<MapPage>; onClose: () => void }) {
  // What stood when this came onto the page is what the change answers to.
  const [before] = useState(page);
  const [name, setName] = useState(page.name);
  const [notes, setNotes] = useState(page.notes);
  const [reason, setReason] = useState('');
  const change = useChangeMap(page.id);

  function keep(event: FormEvent) {
    event.preventDefault();
    change.mutate(
      {
        ...(name === before.name ? {} : { name }),
        ...(notes === before.notes ? {} : { notes }),
        reason,
        stamp: before.stamp,
      },
      { onSuccess: onClose },
    );
  }

  return (
    <Dialog title="Name and notes" open onClose={onClose}>
      <form onSubmit={keep} style={{ display: 'contents' }}>
        <TextField
          label="Name"
          help="Sheets name their map by it: amend those that do."
          required
          value={name}
          onChange={(event) => setName(event.target.value)}
          autoFocus
        />
        <TextArea label="Notes" rows={3} value={notes} onChange={(event) => setNotes(event.target.value)} />
        <ChangeEnd reason={reason} onReason={setReason} act={change} onClose={onClose} />
      </form>
    </Dialog>
  );
}
