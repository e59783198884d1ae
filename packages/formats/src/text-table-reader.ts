import { accepted, type Remark, type Result, refused, remark } from '@pullbook/core/remark';
import { guessMeanings } from './guess/guess-meanings.ts';
import { nameAndUnit } from './guess/header-unit.ts';
import { transposedTable } from './guess/transposed-table.ts';
import type { UnguessedColumn } from './guess/unguessed-column.ts';
import type { FileReading, TextLayout } from './model.ts';
import { CappedRemarks } from './text/capped-remarks.ts';
import { CellText } from './text/cell-text.ts';
import { sampleColumnKinds } from './text/column-kinds.ts';
import { decimalCommaTrouble } from './text/decimal-comma-trouble.ts';
import { startOfText, toNarrowBytes, withoutTrailingZeros } from './text/decode-text.ts';
import { findHeader, type HeaderPlace } from './text/find-header.ts';
import { groupRows, mayPartPulls } from './text/group-rows.ts';
import { joinedBytes } from './text/joined-bytes.ts';
import { layoutRemarks } from './text/layout-remarks.ts';
import { withoutPageBreaks } from './text/page-breaks.ts';
import { RowReader } from './text/read-rows.ts';
import { shortened } from './text/row-remarks.ts';
import type { RowsRead } from './text/rows-read.ts';
import {
  LONGEST_RECORD_BYTES,
  MOST_BYTES,
  MOST_COLUMNS,
  tooLongRecord,
  tooManyBytes,
  tooManyCells,
  tooManyColumns,
} from './text/size-limits.ts';
import { cutAtLineEnd, type Separators, sniffSeparators } from './text/sniff-layout.ts';
import { eachRecord, type TextBytes } from './text/split-records.ts';
import { startsAgain } from './text/starts-again.ts';
import { TextRuns } from './text/text-runs.ts';

/** The layout is found in so much of a file: a hundred rows of a very wide one. */
const HEAD_BYTES = 4e6;

/** What is known once the head of a file has been looked at. */
interface Opened {
  encoding: TextLayout['encoding'];
  separators: Separators;
  place: HeaderPlace;
  columns: number;
  rows: RowReader;
  narrow: (chunk: Uint8Array) => Uint8Array;
}

/**
 * Reads a delimited text file that comes in pieces, so that a long one never stands in memory: `feed` it piece by piece,
 * then `finish`. See `readTextFile` for what is read and what is refused.
 *
 * @example
 * const reader = new TextTableReader('pull.csv');
 * for (const piece of pieces) if (!reader.feed(piece)) break;
 * const reading = reader.finish();
 */
export class TextTableReader {
  private readonly name: string;
  private readonly remarks = new CappedRemarks();
  private head: Uint8Array[] = [];
  private fedBytes = 0;
  private opened: Opened | null = null;
  private refusal: Remark | null = null;
  /** Bytes of a record whose end has not come yet. */
  private rest: Uint8Array = new Uint8Array(0);
  /** Zero bytes after the rest: a log that was cut off ends in them. */
  private zeros = 0;

  /** `fileBytes`: the file's length where it is known, so that one too large is refused before it is read. */
  constructor(name: string, fileBytes = 0) {
    this.name = name;
    if (fileBytes > MOST_BYTES) this.refusal = tooManyBytes(name, fileBytes);
  }

  /** Takes the next piece, which is not kept; `false`: no more is wanted, and `finish` says why. */
  feed(piece: Uint8Array): boolean {
    this.fedBytes += piece.length;
    if (this.fedBytes > MOST_BYTES) this.refusal ??= tooManyBytes(this.name, this.fedBytes);
    if (this.refusal) return false;
    if (this.opened) this.refusal = this.take(this.opened, this.opened.narrow(piece), false);
    else if (this.fedBytes < HEAD_BYTES) this.head.push(piece.slice());
    else this.refusal = this.open(joinedBytes([...this.head, piece]), false);
    return this.refusal === null;
  }

  /** The whole reading, or why there is none. */
  finish(): Result<FileReading> {
    if (!this.opened) this.refusal ??= this.open(joinedBytes(this.head), true);
    const { opened } = this;
    if (opened) this.refusal ??= this.take(opened, new Uint8Array(0), true);
    if (this.refusal || !opened) return refused(this.refusal as Remark);
    const read = opened.rows.finish();
    const remarks = [
      ...this.tailRemarks(opened.rows.line),
      ...layoutRemarks(opened.separators, opened.place, read),
      ...this.remarks.list(),
    ];
    return accepted(readingOf(this.name, opened, read, remarks));
  }

  /** Finds the layout in the first bytes, and reads the rows among them. */
  private open(bytes: Uint8Array, isWhole: boolean): Remark | null {
    this.head = [];
    const start = startOfText(bytes.subarray(0, HEAD_BYTES), isWhole, this.name);
    if (!start.ok) return start.remarks[0] as Remark;
    const { encoding, markBytes } = start.value;
    const narrow = toNarrowBytes(encoding);
    const text = narrow(bytes.subarray(markBytes));
    const cells = new CellText(encoding === 'windows-1252' ? encoding : 'utf-8');
    const head = { bytes: withoutTrailingZeros(isWhole ? text : cutAtLineEnd(text, HEAD_BYTES)), cells };
    const separators = sniffSeparators(head);
    const place = findHeader(head, separators);
    if (!place) return noData(this.name, head, isWhole);
    const kinds = sampleColumnKinds(head, separators, place);
    if (kinds.length < 2) return oneColumn(this.name, place);
    const lost =
      transposedTable(this.name, head, separators) ?? decimalCommaTrouble(this.name, head, separators, place);
    if (lost) return lost;
    if (kinds.length > MOST_COLUMNS)
      return tooManyColumns(this.name, kinds.length, place.headerLine ?? place.firstDataLine);
    const runs = kinds.map((kind, column) =>
      mayPartPulls(kind, place.names[column] ?? '') ? new TextRuns() : null,
    );
    const rows = new RowReader({ separators, place, kinds, runs, cells }, this.remarks);
    this.opened = { encoding, separators, place, columns: kinds.length, rows, narrow };
    return this.take(this.opened, text, false);
  }

  /** Hands over all records that are whole. Zero bytes at the end wait until something follows them. */
  private take({ rows, columns }: Opened, piece: Uint8Array, isLast: boolean): Remark | null {
    const written = withoutTrailingZeros(piece);
    if (written.length > 0 && this.zeros > 0) {
      if (this.zeros > LONGEST_RECORD_BYTES) return tooLongRecord(this.name, rows.line);
      this.rest = joinedBytes([this.rest, new Uint8Array(this.zeros)]);
      this.zeros = 0;
    }
    this.zeros += piece.length - written.length;
    const bytes = joinedBytes([this.rest, written]);
    const at = rows.take(bytes, 0, bytes.length, isLast);
    this.rest = bytes.slice(at);
    if (rows.isFull) return tooManyCells(this.name, columns, rows.line);
    return this.rest.length > LONGEST_RECORD_BYTES ? tooLongRecord(this.name, rows.line) : null;
  }

  private tailRemarks(line: number): Remark[] {
    if (this.zeros === 0) return [];
    const message = `${this.name} ends in ${this.zeros} zero bytes, as a log does that was cut off; they are left out.`;
    return [remark('note', 'trailing-zero-bytes', message, { line })];
  }
}

function readingOf(name: string, opened: Opened, read: RowsRead, remarks: Remark[]): FileReading {
  const { encoding, separators, place } = opened;
  const unguessed = read.columns.map((column, index) => unguessedColumn(column, index, place));
  const { guesses, remarks: questions } = guessMeanings(unguessed, separators.decimalMark);
  const columns = unguessed.map(({ isText: _, ...column }, index) => ({
    ...column,
    guess: guesses[index] as (typeof guesses)[number],
  }));
  const parted = (newStarts: RowsRead['newStarts']) =>
    groupRows(
      { ...read, newStarts },
      unguessed.map((column) => column.name),
      place.preamble.at(-1)?.text ?? '',
    );
  const told = parted(withoutPageBreaks(read.newStarts, columns));
  const again = told.length === 1 ? startsAgain(columns) : [];
  const groups = again.length === 0 ? told : parted(again);
  return {
    name,
    layout: {
      encoding,
      delimiter: separators.delimiter,
      decimalMark: separators.decimalMark,
      headerLine: place.headerLine,
      unitLine: place.unitLine,
      firstDataLine: place.firstDataLine,
    },
    columns,
    rowCount: read.rowCount,
    lineOfRow: read.lineOfRow,
    groups,
    preview: read.preview,
    preamble: place.preamble,
    remarks: [...remarks, ...restartRemark(read, again)],
    questions,
  };
}

function restartRemark({ lineOfRow }: RowsRead, again: RowsRead['newStarts']): Remark[] {
  const line = lineOfRow[again[0]?.row ?? -1];
  if (line === undefined) return [];
  const message = `The readings start again in line ${line}: the file is read as ${again.length + 1} pulls.`;
  return [remark('note', 'starts-again', message, { line })];
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
    holdsClock: kind === 'clock',
  };
}

function noData(name: string, head: TextBytes, isWhole: boolean): Remark {
  let lines = 0;
  let firstLine = 0;
  let digits: { line: number; text: string } | null = null;
  eachRecord(head, '\t', (fields, line) => {
    const text = fields.join(' ').trim();
    if (text !== '') lines += 1;
    if (lines === 1 && firstLine === 0) firstLine = line;
    if (lines > 1 && /\d/.test(text)) digits ??= { line, text };
    return true;
  });
  const where =
    lines === 1 ? ': it ends after the header' : ` in its ${isWhole ? '' : 'first '}${lines} lines`;
  const message = `${name} has no row of numbers${where}${digits === null ? '' : wordsOfDigits(digits)}. Export the run with its readings.`;
  return remark('refusal', 'no-data', message, { line: Math.max(1, firstLine) });
}

/** Figures that are no plain numbers, to say what stands in their way. */
const wordsOfDigits = ({ line, text }: { line: number; text: string }): string =>
  `; line ${line} (“${shortened(text)}”) has figures, but with signs or units on them that no number has`;

function oneColumn(name: string, place: HeaderPlace): Remark {
  const message = `${name} has one column only; a pull needs engine speed and torque or power, parted by comma, semicolon or tab.`;
  return remark('refusal', 'one-column', message, { line: place.firstDataLine, column: 1 });
}
