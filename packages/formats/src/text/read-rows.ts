import type { CappedRemarks } from './capped-remarks.ts';
import { cellKind, cellNumber, isMissing } from './cell-number.ts';
import { secondsFromClock, secondsFromFirst } from './clock-time.ts';
import { type ColumnKind, sampleColumnKinds } from './column-kinds.ts';
import { ColumnStore, TextRuns } from './column-store.ts';
import type { HeaderPlace } from './find-header.ts';
import { mayPartPulls } from './group-rows.ts';
import { rowTrouble } from './left-out-rows.ts';
import { RowRemarks } from './row-remarks.ts';
import type { RowsRead } from './rows-read.ts';
import type { Separators } from './sniff-layout.ts';
import { eachRecord } from './split-records.ts';

const PREVIEW_ROWS = 20;
/** Numbers a file may hold at most; 8 bytes each. */
const MOST_CELLS = 60e6;

/**
 * Reads the data rows into one typed array a column. Rows that are not data, cells that are no numbers and rows of odd
 * length are told with line and column.
 */
export function readRows(
  text: string,
  separators: Separators,
  place: HeaderPlace,
  remarks: CappedRemarks,
): RowsRead {
  const { decimalMark } = separators;
  const kinds = sampleColumnKinds(text, separators, place);
  const width = kinds.length;
  const stores = kinds.map(() => new ColumnStore());
  const runs = kinds.map((kind, column) =>
    mayPartPulls(kind, place.names[column] ?? '') ? new TextRuns() : null,
  );
  const lines = new ColumnStore();
  const preview: string[][] = [];
  const isNumeric = (column: number) => kinds[column] !== 'text';
  const readsAsNumber = (cell: string) => {
    const kind = cellKind(cell, decimalMark);
    return kind === 'number' || kind === 'clock';
  };
  const tell = new RowRemarks(remarks, place);
  let row = 0;
  let tooLarge = false;
  eachRecord(text, separators.delimiter, (fields, line) => {
    if (line < place.firstDataLine) return true;
    if (fields.length <= 1 && (fields[0] ?? '').trim() === '') return true;
    if (isSuspicious(fields, decimalMark)) {
      if (fields.every((field) => field.trim() === '')) return true;
      const trouble = rowTrouble(fields, place.names, place.units, isNumeric, readsAsNumber);
      if (trouble) {
        tell.leftOut(trouble, fields, line);
        return true;
      }
    }
    if (fields.length < place.dataWidth && fields.length < width) tell.shortRow(fields.length, line);
    if (fields.length > width) tell.longRow(fields, width, line);
    for (let column = 0; column < width; column++) {
      const cell = fields[column] ?? '';
      const kind = kinds[column];
      if (kind !== 'text') {
        const value = kind === 'clock' ? clockOrNaN(cell) : cellNumber(cell, decimalMark);
        if (Number.isNaN(value) && !isMissing(cell)) tell.notANumber(cell, column, line);
        stores[column]?.push(value);
      } else stores[column]?.push(Number.NaN);
      runs[column]?.push(cell.trim(), row);
    }
    if (row < PREVIEW_ROWS) preview.push(Array.from({ length: width }, (_, column) => fields[column] ?? ''));
    lines.push(line);
    row += 1;
    tooLarge = row * width > MOST_CELLS;
    return !tooLarge;
  });
  return {
    columns: stores.map((store, column) => {
      const values = store.finish();
      const kind = kinds[column] as ColumnKind;
      if (kind === 'clock') secondsFromFirst(values);
      const found = runs[column] ?? null;
      return { kind, values, ...rangeOf(store, values, kind), runs: found?.tooMany ? null : found };
    }),
    rowCount: row,
    preview,
    lineOfRow: Uint32Array.from(lines.finish()),
    tooLarge,
  };
}

/** Quick look whether a row may be something else than data: its first or second filled cell is no number. */
function isSuspicious(fields: readonly string[], decimalMark: '.' | ','): boolean {
  return (
    Number.isNaN(cellNumber(fields[0] ?? '', decimalMark)) ||
    Number.isNaN(cellNumber(fields[1] ?? '', decimalMark))
  );
}

function clockOrNaN(cell: string): number {
  return secondsFromClock(cell) ?? Number.NaN;
}

function rangeOf(store: ColumnStore, values: Float64Array, kind: ColumnKind) {
  let { low, high } = store;
  if (kind === 'clock') {
    low = Number.POSITIVE_INFINITY;
    high = Number.NEGATIVE_INFINITY;
    for (const value of values) {
      if (value < low) low = value;
      if (value > high) high = value;
    }
  }
  const none = store.count === 0;
  return {
    count: store.count,
    missing: store.missing,
    low: none ? Number.NaN : low,
    high: none ? Number.NaN : high,
  };
}
