import type { CappedRemarks } from './capped-remarks.ts';
import type { HeaderPlace } from './find-header.ts';
import type { RowTrouble } from './left-out-rows.ts';

/** The words for what is odd about a row or a cell, with line and column. */
export class RowRemarks {
  private readonly remarks: CappedRemarks;
  private readonly place: HeaderPlace;

  constructor(remarks: CappedRemarks, place: HeaderPlace) {
    this.remarks = remarks;
    this.place = place;
  }

  leftOut(trouble: RowTrouble, fields: readonly string[], line: number): void {
    const message = () => `Line ${line} ${LEFT_OUT[trouble](fields)}; it is left out.`;
    this.remarks.add('note', trouble, message, { line, column: 1 });
  }

  shortRow(count: number, line: number): void {
    const message = () =>
      `Line ${line} has ${count} of ${this.place.dataWidth} fields; what is not there counts as missing.`;
    this.remarks.add('caution', 'short-row', message, { line, column: count + 1 });
  }

  longRow(fields: readonly string[], width: number, line: number): void {
    const extra = fields.findIndex((field, column) => column >= width && field.trim() !== '');
    if (extra < 0) return;
    const message = () =>
      `Line ${line} has ${fields.length} fields, ${width} are expected; what stands beyond is left out.`;
    this.remarks.add('caution', 'long-row', message, { line, column: extra + 1 });
  }

  notANumber(cell: string, column: number, line: number): void {
    const name = this.place.names[column]?.replace(/\s+/g, ' ').trim() || `Column ${column + 1}`;
    const message = () =>
      `Line ${line}, column ${column + 1} (${name}): “${shortened(cell)}” is not a number; it counts as missing.`;
    this.remarks.add('caution', 'text-among-numbers', message, { line, column: column + 1 });
  }
}

const LEFT_OUT: Record<RowTrouble, (fields: readonly string[]) => string> = {
  'repeated-header': () => 'repeats the header',
  'summary-row': (fields) =>
    `(“${shortened(fields.find((field) => field.trim() !== '') ?? '')}”) sums up the run instead of being a reading`,
  'words-row': (fields) => `(“${shortened(fields.join(' '))}”) holds words and no readings`,
};

const LONGEST_SHOWN = 40;

function shortened(text: string): string {
  const plain = text.replace(/\s+/g, ' ').trim();
  return plain.length <= LONGEST_SHOWN ? plain : `${plain.slice(0, LONGEST_SHOWN - 1)}…`;
}
