import type { Channel, ChannelMeaning } from '@pullbook/core/pull';
import type { QuantityKind } from '@pullbook/core/quantity';
import type { Remark } from '@pullbook/core/remark';

/** How a delimited text file is laid out. */
export interface TextLayout {
  encoding: 'utf-8' | 'utf-8 with BOM' | 'utf-16le' | 'utf-16be' | 'windows-1252';
  delimiter: ',' | ';' | '\t' | '|' | ' ';
  decimalMark: '.' | ',';
  /** 1-based line where the header starts; `null`: no header. */
  headerLine: number | null;
  /** 1-based line of a row of units; `null`: none. */
  unitLine: number | null;
  /** 1-based line where the data start. */
  firstDataLine: number;
}

/** How sure the guess of a column's meaning is, and why. */
export type GuessBasis = 'name' | 'identity' | 'range' | 'none';

export interface ReadColumn {
  /** From 0. */
  index: number;
  /** Header without its unit; `Column 3` where there is no header. */
  name: string;
  /** Unit as written in the file, '' none. */
  unitText: string;
  guess: { meaning: ChannelMeaning; unit: string; kind: QuantityKind; basis: GuessBasis; why: string };
  /** Numbers read. */
  count: number;
  missing: number;
  /** Its cells are clock times, read as seconds from the first row. */
  holdsClock: boolean;
  /** Lowest and highest in the file's own unit; NaN when count is 0. */
  low: number;
  high: number;
  /** As read, in the file's own unit, NaN where missing; one a data row. */
  values: Float64Array;
}

/** A block of rows that is one pull. */
export interface RowGroup {
  /** Text of the grouping column, or '' when the file is one pull. */
  name: string;
  fromRow: number;
  /** Included. */
  toRow: number;
}

/** A file as far as it could be read. Nothing is confirmed yet. */
export interface FileReading {
  name: string;
  layout: TextLayout;
  columns: ReadColumn[];
  rowCount: number;
  /** 1-based line of each data row. */
  lineOfRow: Uint32Array;
  groups: RowGroup[];
  /** The first rows as text, for the preview. */
  preview: string[][];
  /** Lines before the header that are not data. */
  preamble: { line: number; text: string }[];
  remarks: Remark[];
  /** What a person has to settle about the guesses; answered once this kind of file was confirmed. */
  questions: Remark[];
}

/** The confirmed meaning of a column. `null` meaning: left out. */
export interface ColumnMapping {
  index: number;
  meaning: ChannelMeaning | null;
  /** A spelling of the quantity tables; for `other` any text. */
  unit: string;
}

/** A pull as it comes out of a file, before the book knows it. */
export interface PullDraft {
  name: string;
  channels: Channel[];
  remarks: Remark[];
}
