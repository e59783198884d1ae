import { type ChannelMeaning, MEANINGS } from '@pullbook/core/pull';
import { unitsOfKind } from '@pullbook/core/quantity';
import { type ColumnMapping, type FileReading, guessedMapping, type TextLayout } from '@pullbook/formats';
import type { ShownRemark } from '@pullbook/views';
import { edgeNumber } from './number.ts';
import { shownRemarks } from './remark.ts';

/** A file as far as it could be read, for a person to confirm. Nothing is stored. */
export interface ReadFileReport {
  fileName: string;
  hash: string;
  /** Pulls the book already has of these bytes. */
  known: { pullIds: string[] } | null;
  layout: TextLayout;
  rowCount: number;
  groups: { name: string; rows: number }[];
  columns: {
    index: number;
    name: string;
    unitText: string;
    count: number;
    missing: number;
    low: number | null;
    high: number | null;
    guess: { meaning: ChannelMeaning; unit: string; basis: string; why: string };
  }[];
  mapping: ColumnMapping[];
  preview: string[][];
  remarks: ShownRemark[];
  /** What a column may mean, with the units accepted for it. */
  meanings: { id: ChannelMeaning; label: string; units: string[] }[];
}

/** The reading of a file as a report at the edge. */
export function fileReport(reading: FileReading, hash: string, known: string[]): ReadFileReport {
  return {
    fileName: reading.name,
    hash,
    known: known.length > 0 ? { pullIds: known } : null,
    layout: reading.layout,
    rowCount: reading.rowCount,
    groups: reading.groups.map((group) => ({ name: group.name, rows: group.toRow - group.fromRow + 1 })),
    columns: reading.columns.map(({ guess, ...column }) => ({
      index: column.index,
      name: column.name,
      unitText: column.unitText,
      count: column.count,
      missing: column.missing,
      low: edgeNumber(column.low),
      high: edgeNumber(column.high),
      guess: { meaning: guess.meaning, unit: guess.unit, basis: guess.basis, why: guess.why },
    })),
    mapping: guessedMapping(reading),
    preview: reading.preview,
    remarks: shownRemarks(reading.remarks),
    meanings: (Object.keys(MEANINGS) as ChannelMeaning[]).map((id) => ({
      id,
      label: MEANINGS[id].label,
      units: id === 'other' ? [] : unitsOfKind(MEANINGS[id].kind).map((unit) => unit.name),
    })),
  };
}
