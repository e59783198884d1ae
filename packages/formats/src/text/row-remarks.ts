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
    const message = () => `Line ${line} ${LEFT_OUT[trouble](fields)}.`;
    this.remarks.add('note', trouble, message, { line, column: 1 });
  }

  notUtf8(line: number): void {
    const message = () =>
      `Line ${line} holds bytes that are not UTF-8, as the lines before are; they are read as windows-1252. Check its words.`;
    this.remarks.add('caution', 'mixed-encoding', message, { line, column: 1 });
  }

  shortRow(count: number, line: number, isLost: boolean): void {
    const message = () =>
      `Line ${line} has ${count} of ${this.place.dataWidth} fields; ${isLost ? 'columns parted by blanks do not tell which one is missing, so that all of the row count as missing. Export with commas, semicolons or tabs to keep it' : 'what is not there counts as missing'}.`;
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
  'repeated-header': () => 'repeats the header; it is left out',
  'summary-row': (fields) =>
    `(“${shortened(fields.find((field) => field.trim() !== '') ?? '')}”) sums up the run instead of being a reading; it is left out`,
  'word-first-row': (fields) =>
    `begins with a word (“${shortened(fields[0] ?? '')}”) where the others have a reading; it is left out`,
  'words-row': (fields) => `(“${shortened(fields.join(' '))}”) holds words and no readings; it is left out`,
};

const LONGEST_SHOWN = 40;

/** A text on one line, cut where it is long. */
export function shortened(text: string): string {
  const plain = text.replace(/[\s\p{Cc}]+/gu, ' ').trim();
  return plain.length <= LONGEST_SHOWN ? plain : `${plain.slice(0, LONGEST_SHOWN - 1)}…`;
}
