import { accepted, type Remark, type Result, refused, remark } from '@pullbook/core/remark';
import { guessMeanings } from './guess/guess-meanings.ts';
import { nameAndUnit } from './guess/header-unit.ts';
import type { UnguessedColumn } from './guess/unguessed-column.ts';
import type { FileReading } from './model.ts';
import { CappedRemarks } from './text/capped-remarks.ts';
import { decodeText } from './text/decode-text.ts';
import { findHeader, type HeaderPlace } from './text/find-header.ts';
import { groupRows } from './text/group-rows.ts';
import { readRows } from './text/read-rows.ts';
import type { RowsRead } from './text/rows-read.ts';
import { type Separators, sniffSeparators } from './text/sniff-layout.ts';

/**
 * Reads an ordinary delimited text file of a pull as far as it can be read: layout, columns as numbers in the file's
 * own units, a guess at each column's meaning and unit, the blocks of rows that are pulls, and remarks with 1-based
 * line and column. Nothing is confirmed yet: `guessedMapping` and a person come next, then `pullsFromReading`.
 *
 * Refused: an empty file, one that is no text, one without rows of numbers, one with a single column.
 *
 * @example
 * const reading = readTextFile(new TextEncoder().encode('rpm;Nm\n2000;301,5\n2100;305,0\n'), 'pull.csv');
 * // reading.value.layout.decimalMark === ','; reading.value.columns[1].values → [301.5, 305]
 */
export function readTextFile(bytes: Uint8Array, name: string): Result<FileReading> {
  const decoded = decodeText(bytes, name);
  if (!decoded.ok) return decoded;
  const { text, encoding } = decoded.value;
  const separators = sniffSeparators(text);
  const place = findHeader(text, separators);
  if (!place) {
    const message = `${name} has no row of numbers${headerOnlyWords(text)}. Export the run with its readings.`;
    return refused(remark('refusal', 'no-data', message));
  }
  const rowRemarks = new CappedRemarks();
  const read = readRows(text, separators, place, rowRemarks);
  if (read.columns.length < 2) {
    const message = `${name} has one column only; a pull needs engine speed and torque or power, parted by comma, semicolon or tab.`;
    return refused(remark('refusal', 'one-column', message, { line: place.firstDataLine, column: 1 }));
  }
  if (read.tooLarge) {
    const message = `${name} holds more numbers than can be read at once (60 million). Cut the log to the pulls, or leave channels out.`;
    return refused(remark('refusal', 'file-too-large', message));
  }
  const unguessed = read.columns.map((column, index) => unguessedColumn(column, index, place));
  const { guesses, remarks: guessRemarks } = guessMeanings(unguessed, separators.decimalMark);
  const reading: FileReading = {
    name,
    layout: {
      encoding,
      delimiter: separators.delimiter,
      decimalMark: separators.decimalMark,
      headerLine: place.headerLine,
      unitLine: place.unitLine,
      firstDataLine: place.firstDataLine,
    },
    columns: unguessed.map(({ isText: _, isClock: __, ...column }, index) => ({
      ...column,
      guess: guesses[index] as (typeof guesses)[number],
    })),
    rowCount: read.rowCount,
    lineOfRow: read.lineOfRow,
    groups: groupRows(
      read,
      unguessed.map((column) => column.name),
    ),
    preview: read.preview,
    preamble: place.preamble,
    remarks: [
      ...decoded.remarks,
      ...layoutRemarks(separators, place, read),
      ...rowRemarks.list(),
      ...guessRemarks,
    ],
  };
  return accepted(reading);
}

function unguessedColumn(
  column: RowsRead['columns'][number],
  index: number,
  place: HeaderPlace,
): UnguessedColumn {
  const header = nameAndUnit(place.names[index] ?? '');
  const unitFromRow = place.units[index] ?? '';
  const { kind, values, count, missing, low, high } = column;
  return {
    index,
    name: header.name === '' ? `Column ${index + 1}` : header.name,
    unitText: unitFromRow === '' ? header.unitText : unitFromRow,
    count,
    missing,
    low,
    high,
    values,
    isText: kind === 'text',
    isClock: kind === 'clock',
  };
}

function layoutRemarks(separators: Separators, place: HeaderPlace, read: RowsRead): Remark[] {
  const remarks = new CappedRemarks();
  const line = place.firstDataLine;
  if (separators.decimalMarkAmbiguous) {
    const meaning = separators.decimalMark === ',' ? 'a decimal mark' : 'a mark between thousands';
    const message = `The comma in figures like 1,250 is taken as ${meaning}; nothing in the file tells for certain. Check the preview.`;
    remarks.add('caution', 'decimal-mark-ambiguous', message, { line });
  }
  if (place.headerLine === null) {
    const message = 'There is no header; the columns are numbered. Say what each one is.';
    remarks.add('note', 'no-header', message, { line });
  } else if (place.dataWidth > place.names.length && separators.delimiter === ',') {
    const message = `The header has ${place.names.length} fields and the rows ${place.dataWidth}: if the decimal mark is a comma too, the file cannot be read right. Export it with semicolons.`;
    remarks.add('caution', 'more-fields-than-header', message, { line });
  }
  for (const [index, column] of read.columns.entries()) {
    if (column.count > 0 || column.kind === 'text') continue;
    const message = `Column ${index + 1} (${place.names[index]?.trim() || 'no name'}) holds no numbers.`;
    remarks.add('note', 'empty-column', message, { line, column: index + 1 });
  }
  return remarks.list();
}

function headerOnlyWords(text: string): string {
  const lines = text.split('\n').filter((line) => line.trim() !== '').length;
  return lines === 1 ? ': it ends after the header' : ` in its ${lines} lines`;
}
