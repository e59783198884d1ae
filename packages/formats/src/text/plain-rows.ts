import type { CellBlocks } from './cell-blocks.ts';
import { cellKind } from './cell-number.ts';
import type { CellText } from './cell-text.ts';
import { secondsFromClock } from './clock-time.ts';
import type { ColumnKind } from './column-kinds.ts';
import type { HeaderPlace } from './find-header.ts';
import { isSummaryWord } from './left-out-rows.ts';
import { PlainNumbers } from './plain-number.ts';
import type { Separators } from './sniff-layout.ts';
import type { TextRuns } from './text-runs.ts';

const LINE_FEED = 10;
const RETURN = 13;
const TAB = 9;
const BLANK = 32;
const QUOTE = 34;
const NO_BYTE = -1;
const NOT_PLAIN = -1;

/** What the rows of a table are read by. */
export interface RowPlan {
  separators: Separators;
  place: HeaderPlace;
  kinds: readonly ColumnKind[];
  runs: readonly (TextRuns | null)[];
  cells: CellText;
}

/**
 * The quick way through rows in which every cell is what its column holds: a plain number, a clock time, words, or
 * nothing. A row with anything else in it is left to the careful way, which knows all spellings and says what is odd.
 */
export class PlainRows {
  private readonly plan: RowPlan;
  private readonly blocks: CellBlocks;
  private readonly numbers = new PlainNumbers();
  private readonly watched: { column: number; runs: TextRuns }[];
  /** Where the cells of the row being looked at stand. */
  private readonly starts: Int32Array;
  private readonly ends: Int32Array;
  private readonly delimiter: number;
  /** In quotes a decimal mark may be the sign that parts fields elsewhere. */
  private readonly quotedMark: number;
  private readonly bareMark: number;
  private readonly tab: number;
  private readonly mayBePlain: boolean;

  constructor(plan: RowPlan, blocks: CellBlocks) {
    const { kinds, place, runs, separators } = plan;
    this.plan = plan;
    this.blocks = blocks;
    this.watched = runs.flatMap((one, column) => (one ? [{ column, runs: one }] : []));
    this.starts = new Int32Array(kinds.length);
    this.ends = new Int32Array(kinds.length);
    this.delimiter = separators.delimiter.charCodeAt(0);
    this.quotedMark = separators.decimalMark.charCodeAt(0);
    this.bareMark = this.quotedMark === this.delimiter ? NO_BYTE : this.quotedMark;
    this.tab = this.delimiter === TAB ? NO_BYTE : TAB;
    this.mayBePlain = tellsApart(place.names, kinds) && tellsApart(place.units, kinds);
  }

  /**
   * Takes plain rows from `from` on, one a line, `line` being the first one's; gives where it stopped: before a row that
   * is not plain, after `mostRows`, or where no whole line is left before `to`.
   */
  take(bytes: Uint8Array, from: number, to: number, line: number, mostRows: number): number {
    if (!this.mayBePlain) return from;
    const { blocks } = this;
    const end = endOfLastLine(bytes, from, to);
    let at = from;
    for (let row = 0; at < end && row < mostRows; row++) {
      const next = this.row(bytes, at);
      if (next === NOT_PLAIN) break;
      for (const { column, runs } of this.watched) this.watch(bytes, column, runs);
      blocks.endRow(line + row);
      at = next;
    }
    return at;
  }

  /**
   * Reads the row that starts at `from` into the block; gives the start of the next, or `NOT_PLAIN`. A line end is sure
   * to come, and no loop runs over it: so none looks at the length.
   */
  private row(bytes: Uint8Array, from: number): number {
    const { delimiter, tab, starts, ends } = this;
    const { kinds } = this.plan;
    const { cells, rowsOfABlock } = this.blocks;
    const width = kinds.length;
    let slot = this.blocks.place;
    let column = 0;
    let filled = 0;
    let at = from;
    let byte = bytes[at] as number;
    for (;;) {
      while (byte === BLANK || byte === tab) byte = bytes[++at] as number;
      const isEnd = byte === LINE_FEED || byte === RETURN;
      if (isEnd && (delimiter === BLANK || column >= width)) break;
      let value = Number.NaN;
      const start = at;
      if (byte !== delimiter && !isEnd) {
        // Beyond the last column only empty cells are plain.
        if (column >= width) return NOT_PLAIN;
        const kind = kinds[column];
        if (kind === 'number') {
          const quoted = byte === QUOTE;
          value = this.numbers.at(bytes, quoted ? at + 1 : at, quoted ? this.quotedMark : this.bareMark);
          at = this.numbers.end;
          if (quoted && bytes[at++] !== QUOTE) return NOT_PLAIN;
        } else {
          at = endOfWords(bytes, at, delimiter);
          if (bytes[at] === QUOTE) return NOT_PLAIN;
          const asked = kind === 'clock' || filled < 2;
          const text = asked ? this.plan.cells.of(bytes, start, at) : '';
          if (kind === 'clock') value = secondsFromClock(text) ?? Number.NaN;
          else if (asked && isSummaryWord(text.trim())) return NOT_PLAIN;
        }
        if (kind !== 'text' && Number.isNaN(value)) return NOT_PLAIN;
        filled += 1;
        byte = bytes[at] as number;
      }
      if (column < width) {
        cells[slot] = value;
        slot += rowsOfABlock;
        starts[column] = start;
        ends[column] = at;
      }
      column += 1;
      if (delimiter !== BLANK) while (byte === BLANK || byte === tab) byte = bytes[++at] as number;
      if (byte === delimiter) byte = bytes[++at] as number;
      else if (byte === LINE_FEED || byte === RETURN) break;
      else return NOT_PLAIN;
    }
    if (filled === 0 || (column < width && column < this.plan.place.dataWidth)) return NOT_PLAIN;
    for (; column < width; column++, slot += rowsOfABlock) {
      cells[slot] = Number.NaN;
      starts[column] = ends[column] = at;
    }
    return byte === RETURN && bytes[at + 1] === LINE_FEED ? at + 2 : at + 1;
  }

  private watch(bytes: Uint8Array, column: number, runs: TextRuns): void {
    const start = this.starts[column] as number;
    const end = this.ends[column] as number;
    const quoted = end > start && bytes[start] === QUOTE ? 1 : 0;
    runs.pushBytes(bytes, start + quoted, end - quoted, this.plan.cells, this.blocks.rowCount);
  }
}

/** Whether some column of numbers has a word in this row of words: then no plain row can be that row again. */
function tellsApart(words: readonly string[], kinds: readonly ColumnKind[]): boolean {
  if (words.filter((word) => word.trim() !== '').length < 2) return true;
  return kinds.some((kind, column) => kind !== 'text' && cellKind(words[column] ?? '', '.') === 'text');
}

/** After the last line end, or `from`; a return at the very end may be half a line end. */
function endOfLastLine(bytes: Uint8Array, from: number, to: number): number {
  let at = to;
  while (at > from) {
    const byte = bytes[at - 1];
    if (byte === LINE_FEED || (byte === RETURN && at < to)) return at;
    at -= 1;
  }
  return from;
}

/** The next delimiter, line end or quote. */
function endOfWords(bytes: Uint8Array, from: number, delimiter: number): number {
  for (let at = from; ; at++) {
    const byte = bytes[at];
    if (byte === delimiter || byte === LINE_FEED || byte === RETURN || byte === QUOTE) return at;
  }
}
