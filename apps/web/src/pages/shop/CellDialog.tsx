import type { CellReport } from '@pullbook/workshop';
import { type FormEvent, useState } from 'react';
import { useCellAct } from '../../api/shop.ts';
import { ActTrouble } from '../../parts/ActTrouble.tsx';
import { Button } from '../../parts/Button.tsx';
import { Dialog, DialogActions } from '../../parts/Dialog.tsx';
import { Fields, TextArea, TextField } from '../../parts/Field.tsx';

/** Describes a cell, or changes what is said of one. Only what was changed is sent: a rounded figure stays whole. */
export function CellDialog({
  cell,
  name,
  onClose,
}: {
  cell: CellReport | null;
  name: string;
  onClose: () => void;
}) {
  const first = {
    name,
    brake: cell?.brake ?? '',
    altitude: cell?.altitudeText ?? '',
    momentOfInertia: cell?.momentOfInertiaText ?? '',
    notes: cell?.notes ?? '',
  };
  const [typed, setTyped] = useState(first);
  const act = useCellAct();
  const set = (change: Partial<typeof first>) => setTyped({ ...typed, ...change });

  function submit(event: FormEvent) {
    event.preventDefault();
    const fields = Object.keys(first) as (keyof typeof first)[];
    const change = Object.fromEntries(
      fields.filter((field) => typed[field] !== first[field]).map((field) => [field, typed[field]]),
    );
    if (cell === null) act.mutate({ path: '/cells', body: typed }, { onSuccess: onClose });
    else if (Object.keys(change).length === 0) onClose();
    else {
      const path = `/cells/${cell.id}`;
      act.mutate({ method: 'PATCH', path, body: { change }, stamp: cell.stamp }, { onSuccess: onClose });
    }
  }

  return (
    <Dialog title={cell === null ? 'Describe a cell' : `Change ${cell.name}`} open onClose={onClose}>
      <form onSubmit={submit} style={{ display: 'contents' }}>
        <Fields>
          <TextField
            label="Name"
            help={cell === null ? 'As the pulls name it.' : 'Its pulls follow to another name.'}
            required
            value={typed.name}
            onChange={(event) => set({ name: event.target.value })}
          />
          <TextField
            label="Brake"
            help="“water brake, 300 mm rotor”"
            value={typed.brake}
            onChange={(event) => set({ brake: event.target.value })}
          />
          <TextField
            label="Altitude"
            help="“210 m”, “690 ft” above the sea"
            value={typed.altitude}
            onChange={(event) => set({ altitude: event.target.value })}
          />
          <TextField
            label="Inertia of brake and coupling"
            help="“0.12 kg·m²”; blank where it is not known"
            value={typed.momentOfInertia}
            onChange={(event) => set({ momentOfInertia: event.target.value })}
          />
        </Fields>
        <TextArea
          label="Notes"
          rows={3}
          value={typed.notes}
          onChange={(event) => set({ notes: event.target.value })}
        />
        <ActTrouble act={act} onDone={onClose} onTheirs={onClose} />
        <DialogActions>
          <Button look="main" type="submit" isDisabled={act.isPending}>
            {cell === null ? 'Keep the cell' : 'Keep the change'}
          </Button>
          <Button onPress={onClose}>Cancel</Button>
        </DialogActions>
      </form>
    </Dialog>
  );
}
