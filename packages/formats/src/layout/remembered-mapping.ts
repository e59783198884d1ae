import type { ColumnMapping, FileReading } from '../model.ts';
import { allApart, columnKeys } from './column-keys.ts';
import type { ConfirmedLayout } from './confirmed-layout.ts';

/**
 * The mapping of a confirmed layout put on a file of the same kind, column by column by name and unit, wherever the columns
 * stand; `null` where the file has other columns, or where two of one name stand in another order.
 */
export function rememberedMapping(reading: FileReading, layout: ConfirmedLayout): ColumnMapping[] | null {
  const keys = columnKeys(reading.columns);
  const known = columnKeys(layout.columns);
  const inOrder = keys.length === known.length && keys.every((key, at) => key === known[at]);
  if (!inOrder && !(keys.length === known.length && allApart(keys) && allApart(known))) return null;
  const mapping: ColumnMapping[] = [];
  for (const [at, column] of reading.columns.entries()) {
    const confirmed = layout.columns[inOrder ? at : known.indexOf(keys[at]!)];
    if (!confirmed) return null;
    // A column that holds no number in this file says nothing, whatever it meant in the last one.
    const meaning = column.count === 0 ? null : confirmed.meaning;
    mapping.push({ index: column.index, meaning, unit: confirmed.unit });
  }
  return mapping;
}
