import type { ChannelMeaning } from '@pullbook/core/pull';
import type { ColumnMapping, FileReading } from '../model.ts';
import type { NamedColumn } from './column-keys.ts';
import { identityRatio } from './identity-ratio.ts';

/** A column of a layout as a person confirmed it. */
export interface ConfirmedColumn extends NamedColumn {
  /** `null`: left out. */
  meaning: ChannelMeaning | null;
  unit: string;
  /** What the file itself suggested when it was confirmed: `boost in psi`. */
  suggested: string[];
}

/** What a person confirmed of a kind of file. */
export interface ConfirmedLayout {
  columns: ConfirmedColumn[];
  /** Power over torque × angular speed under the confirmed units; `null`: one of the three is missing, or no one ratio. */
  powerRatio: number | null;
}

/** What is worth keeping of a confirmed reading. `before`: what was kept of the same layout; its suggestions join. */
export function confirmedLayout(
  reading: FileReading,
  mapping: readonly ColumnMapping[],
  before: ConfirmedLayout | null,
): ConfirmedLayout {
  const columns = reading.columns.map((column, at) => {
    const said = mapping.find(({ index }) => index === column.index);
    const met = before?.columns[at]?.suggested ?? [];
    return {
      name: column.name,
      unitText: column.unitText,
      holdsClock: column.holdsClock,
      meaning: said?.meaning ?? null,
      unit: said?.unit ?? '',
      suggested: [...new Set([...met, suggestion(column.guess)])],
    };
  });
  return { columns, powerRatio: identityRatio(reading, mapping) };
}

export const suggestion = ({ meaning, unit }: { meaning: ChannelMeaning; unit: string }): string =>
  `${meaning} in ${unit === '' ? 'no unit' : unit}`;
