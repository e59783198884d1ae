import type { Result } from '@pullbook/core/remark';
import type { FileReading } from './model.ts';
import { TextTableReader } from './text-table-reader.ts';

/**
 * Reads an ordinary delimited text file of a pull as far as it can be read: layout, columns as numbers in the file's
 * own units, a guess at each column's meaning and unit, the blocks of rows that are pulls, and remarks with 1-based
 * line and column. Nothing is confirmed yet: `guessedMapping` and a person come next, then `pullsFromReading`.
 *
 * Refused: an empty file, one that is no text, one without rows of numbers, one with a single column, one that holds
 * more than can be kept (`size-limits.ts`).
 *
 * @example
 * const reading = readTextFile(new TextEncoder().encode('rpm;Nm\n2000;301,5\n2100;305,0\n'), 'pull.csv');
 * // reading.value.layout.decimalMark === ','; reading.value.columns[1].values → [301.5, 305]
 */
export function readTextFile(bytes: Uint8Array, name: string): Result<FileReading> {
  const reader = new TextTableReader(name, bytes.length);
  reader.feed(bytes);
  return reader.finish();
}
