import type { PublicationLink } from '@pullbook/core/publication';
import { type FormEvent, useState } from 'react';
import { useChangeLinks } from '../../api/publish.ts';
import { Button } from '../../parts/Button.tsx';
import { Dialog, DialogActions } from '../../parts/Dialog.tsx';
import { TextField } from '../../parts/Field.tsx';
import { Trouble } from '../../parts/Trouble.tsx';

/** One more place where a publication appeared. */
export function LinkDialog({
  id,
  links,
  onClose,
}: {
  id: string;
  links: PublicationLink[];
  onClose: () => void;
}) {
  const [where, setWhere] = useState('');
  const [day, setDay] = useState('');
  const [note, setNote] = useState('');
  const change = useChangeLinks(id);
  function keep(event: FormEvent) {
    event.preventDefault();
    const link = { where: where.trim(), day: day || null, note: note.trim() };
    change.mutate([...links, link], { onSuccess: onClose });
  }
  return (
    <Dialog title="Where it appeared" open onClose={onClose}>
      <form onSubmit={keep} style={{ display: 'contents' }}>
        <TextField
          label="Where"
          help="An address, or words: “club magazine, page 12”"
          required
          maxLength={2000}
          value={where}
          onChange={(event) => setWhere(event.target.value)}
          autoFocus
        />
        <TextField label="Day" type="date" value={day} onChange={(event) => setDay(event.target.value)} />
        <TextField
          label="Note"
          maxLength={2000}
          value={note}
          onChange={(event) => setNote(event.target.value)}
        />
        <Trouble of={change.error} />
        <DialogActions>
          <Button look="main" type="submit" isDisabled={change.isPending}>
            Keep it
          </Button>
          <Button onPress={onClose}>Cancel</Button>
        </DialogActions>
      </form>
    </Dialog>
  );
}
