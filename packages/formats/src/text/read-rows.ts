import type { CappedRemarks } from './capped-remarks.ts';
import { CellBlocks } from './cell-blocks.ts';
import { cellKind, cellNumber, isMissing } from './cell-number.ts';
import { secondsFromClock, secondsFromFirst } from './clock-time.ts';
import { rowTrouble } from './left-out-rows.ts';
import { PlainRows, type RowPlan } from './plain-rows.ts';
import { type RecordPlace, recordAt } from './record-end.ts';
import { RowRemarks } from './row-remarks.ts';
import type { RowsRead } from './rows-read.ts';
import { MOST_CELLS } from './size-limits.ts';
import { fieldsOf } from './split-records.ts';

const PREVIEW_ROWS = 20;

/**
 * Reads the rows of a table from bytes that may come in pieces, into one typed array a column. Rows that are not data,
 * cells that are no numbers and rows of odd length are told with line and column.
 */
export class RowReader {
  private readonly plan: RowPlan;
  private readonly tell: RowRemarks;
  private readonly blocks: CellBlocks;
  private readonly plain: PlainRows;
  private readonly mostRows: number;
  private readonly preview: string[][] = [];
  /** Rows before which the header stands once more, with the words of the line above it. */
  private readonly newStarts: { row: number; words: string }[] = [];
  private wordsBefore = '';
  /** 1-based line where the next record starts. */
  line = 1;

  constructor(plan: RowPlan, remarks: CappedRemarks) {
    this.plan = plan;
    this.tell = new RowRemarks(remarks, plan.place);
    this.blocks = new CellBlocks(plan.kinds.length);
    this.plain = new PlainRows(plan, this.blocks);
    this.mostRows = Math.floor(MOST_CELLS / Math.max(plan.kinds.length, 1));
  }

  /** The file holds more numbers than can be kept. */
  get isFull(): boolean {
    return this.blocks.rowCount >= this.mostRows;
  }

  /** Takes the records that end before `to`; gives where the rest starts, which is to come again with more behind it. */
  take(bytes: Uint8Array, from: number, to: number, isLast: boolean): number {
    let at = from;
    while (at < to && !this.isFull) {
      const { rowCount } = this.blocks;
      if (this.line >= this.plan.place.firstDataLine && rowCount >= PREVIEW_ROWS) {
        at = this.plain.take(bytes, at, to, this.line, this.mostRows - rowCount);
        const taken = this.blocks.rowCount - rowCount;
        this.line += taken;
        if (taken > 0) this.wordsBefore = '';
        if (at >= to || this.isFull) break;
      }
      const record = recordAt(bytes, at, to, this.plan.separators.delimiter.charCodeAt(0), isLast);
      if (!record) break;
      if (this.line >= this.plan.place.firstDataLine) this.takeRecord(bytes, at, record);
      this.line += record.lines;
      at = record.next;
    }
    return at;
  }

  private takeRecord(bytes: Uint8Array, from: number, record: RecordPlace): void {
    const { cells, place, separators } = this.plan;
    const { line } = this;
    const oddBefore = cells.odd;
    const fields = fieldsOf({ bytes, cells }, from, record, separators.delimiter);
    if (cells.odd > oddBefore) this.tell.notUtf8(line);
    if (fields.length <= 1 && (fields[0] ?? '').trim() === '') return;
    if (this.isSuspicious(fields)) {
      if (fields.every((field) => field.trim() === '')) return;
      const trouble = rowTrouble(fields, place.names, place.units, this.isNumeric, this.readsAsNumber);
      if (trouble) {
        this.tell.leftOut(trouble, fields, line);
        if (trouble === 'repeated-header') this.startAnew();
        else if (trouble === 'words-row') this.wordsBefore = fields.join(' ').trim();
        return;
      }
    }
    this.wordsBefore = '';
    this.takeRow(fields);
  }

  private takeRow(fields: string[]): void {
    const { kinds, place, runs, separators } = this.plan;
    const { blocks, line, tell } = this;
    const width = kinds.length;
    const isShort = fields.length < place.dataWidth && fields.length < width;
    // Parted by blanks, a row does not tell which of its readings is missing.
    const isLost = isShort && separators.delimiter === ' ';
    if (isShort) tell.shortRow(fields.length, line, isLost);
    if (fields.length > width) tell.longRow(fields, width, line);
    const row = blocks.rowCount;
    for (let column = 0; column < width; column++) {
      const cell = isLost ? '' : (fields[column] ?? '');
      const kind = kinds[column];
      let value = Number.NaN;
      if (kind !== 'text') {
        value =
          kind === 'clock'
            ? (secondsFromClock(cell) ?? Number.NaN)
            : cellNumber(cell, separators.decimalMark);
        if (Number.isNaN(value) && !isMissing(cell)) tell.notANumber(cell, column, line);
      }
      blocks.cells[column * blocks.rowsOfABlock + blocks.place] = value;
      runs[column]?.push(cell.trim(), row);
    }
    if (row < PREVIEW_ROWS)
      this.preview.push(Array.from({ length: width }, (_, column) => fields[column] ?? ''));
    blocks.endRow(line);
  }

  /** What was read, each column in an array of its own length. */
  finish(): RowsRead {
    const { kinds, runs } = this.plan;
    return {
      columns: kinds.map((kind, column) => {
        const values = this.blocks.column(column);
        if (kind === 'clock') secondsFromFirst(values);
        const found = runs[column] ?? null;
        return { kind, values, ...tallyOf(values), runs: found?.tooMany ? null : found };
      }),
      rowCount: this.blocks.rowCount,
      preview: this.preview,
      lineOfRow: this.blocks.lineOfRow(),
      newStarts: this.newStarts,
    };
  }

  /** A row of units under the repeated header starts nothing more. */
  private startAnew(): void {
    const row = this.blocks.rowCount;
    if (row > 0 && this.newStarts.at(-1)?.row !== row) this.newStarts.push({ row, words: this.wordsBefore });
    this.wordsBefore = '';
  }

  /** Quick look whether a row may be something else than data: its first or second cell is no number. */
  private isSuspicious(fields: readonly string[]): boolean {
    const { decimalMark } = this.plan.separators;
    return (
      Number.isNaN(cellNumber(fields[0] ?? '', decimalMark)) ||
      Number.isNaN(cellNumber(fields[1] ?? '', decimalMark))
    );
  }

  private readonly isNumeric = (column: number): boolean => this.plan.kinds[column] !== 'text';

  private readonly readsAsNumber = (cell: string): boolean => {
    const kind = cellKind(cell, this.plan.separators.decimalMark);
    return kind === 'number' || kind === 'clock';
  };
}

function tallyOf(values: Float64Array): { count: number; missing: number; low: number; high: number } {
  let missing = 0;
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  // By index: iterating over a long column is several times slower.
  for (let row = 0; row < values.length; row++) {
    const value = values[row] as number;
    if (value >= low && value <= high) continue;
    if (Number.isNaN(value)) missing += 1;
    if (value < low) low = value;
    if (value > high) high = value;
  }
  const count = values.length - missing;
  return count === 0 ? { count, missing, low: Number.NaN, high: Number.NaN } : { count, missing, low, high };
}
