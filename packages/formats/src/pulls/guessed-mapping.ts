import type { ColumnMapping, FileReading } from '../model.ts';

/**
 * The mapping a reading suggests, to be shown for confirmation: columns of words and columns without a number are left
 * out, columns that are not understood are kept as `other` with the unit the file writes.
 */
export function guessedMapping(reading: FileReading): ColumnMapping[] {
  return reading.columns.map(({ index, count, guess }) => {
    if (count === 0) return { index, meaning: null, unit: '' };
    return { index, meaning: guess.meaning, unit: guess.unit };
  });
}
