import { type Channel, MEANINGS, type Pull } from '@pullbook/core/pull';
import type { UnitSystem } from '@pullbook/core/quantity';
import { edgeUnitOfChannel } from '../export/edge-units.ts';
import type { OutTable } from './model.ts';
import { numberColumn, uniqueNames } from './out-columns.ts';
import { asWritten, type OutUnit, outUnit } from './out-unit.ts';

/** The channels of a pull as they were read, not corrected and not gridded: one row a reading, one column a channel. */
export function pullTable(pull: Pull, system: UnitSystem): OutTable {
  const channels = pull.channels.map((channel) => ({ channel, unit: unitOf(channel, system) }));
  const rows = pull.channels[0]?.values.length ?? 0;
  return {
    title: pull.name,
    columns: uniqueNames(
      channels.map(({ channel: { meaning, name }, unit }) =>
        numberColumn(meaning, titleOf(meaning, name), unit),
      ),
    ),
    rows: Array.from({ length: rows }, (_, row) =>
      channels.map(({ channel, unit }) => unit.from(channel.values[row])),
    ),
  };
}

/** `Torque`, and what the file called it where that says more: `Torque (TQ 1)`. */
function titleOf(meaning: Channel['meaning'], name: string): string {
  const { label } = MEANINGS[meaning];
  if (meaning === 'other') return name || label;
  return name === '' || name.toLowerCase() === label.toLowerCase() ? label : `${label} (${name})`;
}

/** What is not understood keeps its unit and its numbers. */
function unitOf(channel: Channel, system: UnitSystem): OutUnit {
  const kept = edgeUnitOfChannel(channel);
  if (channel.meaning === 'other' && kept.suffix === '') return asWritten(kept.name);
  return outUnit(channel.kind, system, channel.meaning);
}
