import type { ChannelMeaning } from '@pullbook/core/pull';
import type { CellReport } from '@pullbook/workshop';
import { type FormEvent, useState } from 'react';
import { useCellAct } from '../../api/shop.ts';
import { Dialog } from '../../parts/Dialog.tsx';
import { Fields, SelectField, TextField } from '../../parts/Field.tsx';
import { KeepEnd } from '../../parts/KeepEnd.tsx';

/** What a cell's instruments usually measure; the command line takes every channel. */
const MEASURES: { value: ChannelMeaning | 'weather'; text: string }[] = [
  { value: 'torque', text: 'Torque: load cell' },
  { value: 'weather', text: 'Weather: pressure, temperature, humidity of the air' },
  { value: 'engineSpeed', text: 'Engine speed' },
  { value: 'boost', text: 'Boost' },
  { value: 'manifoldPressure', text: 'Manifold pressure' },
  { value: 'lambda', text: 'Lambda' },
  { value: 'airFlow', text: 'Air flow' },
  { value: 'fuelFlow', text: 'Fuel flow' },
  { value: 'chargeTemperature', text: 'Charge temperature' },
  { value: 'inletAirTemperature', text: 'Inlet air temperature' },
  { value: 'exhaustTemperature', text: 'Exhaust temperature' },
  { value: 'oilTemperature', text: 'Oil temperature' },
  { value: 'coolantTemperature', text: 'Coolant temperature' },
  { value: 'oilPressure', text: 'Oil pressure' },
  { value: 'fuelPressure', text: 'Fuel pressure' },
];

export function InstrumentDialog({ cell, onClose }: { cell: CellReport; onClose: () => void }) {
  const [name, setName] = useState('');
  const [measures, setMeasures] = useState('torque');
  const [serial, setSerial] = useState('');
  const act = useCellAct();

  function submit(event: FormEvent) {
    event.preventDefault();
    const path = `/cells/${cell.id}/instruments`;
    act.mutate({ path, body: { name, measures, serial }, stamp: cell.stamp }, { onSuccess: onClose });
  }

  return (
    <Dialog title={`An instrument of ${cell.name}`} open onClose={onClose}>
      <form onSubmit={submit} style={{ display: 'contents' }}>
        <Fields wide>
          <TextField
            label="Name"
            required
            value={name}
            onChange={(event) => setName(event.target.value)}
            autoFocus
          />
          <SelectField
            label="What it measures"
            value={measures}
            options={MEASURES}
            onChange={(event) => setMeasures(event.target.value)}
          />
          <TextField
            label="Serial number"
            value={serial}
            onChange={(event) => setSerial(event.target.value)}
          />
        </Fields>
        <KeepEnd act={act} onClose={onClose} keep="Keep the instrument" />
      </form>
    </Dialog>
  );
}
