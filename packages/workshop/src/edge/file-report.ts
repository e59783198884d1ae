import { type ChannelMeaning, MEANINGS } from '@pullbook/core/pull';
import { unitsOfKind } from '@pullbook/core/quantity';
import type { Remark } from '@pullbook/core/remark';
import { type ColumnMapping, type FileReading, guessedMapping, type TextLayout } from '@pullbook/formats';
import type { ShownRemark, ViewOptions } from '@pullbook/views';
import type { KnownKind } from '../layouts.ts';
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
  /** As confirmed of this kind of file before, where `knownLayout.taken`; else as guessed. */
  mapping: ColumnMapping[];
  /** The kind of file, where one laid out alike was confirmed before. */
  knownLayout: KnownLayoutReport | null;
  preview: string[][];
  remarks: ShownRemark[];
  /** What a column may mean, with the units accepted for it. */
  meanings: { id: ChannelMeaning; label: string; units: string[] }[];
}

export interface KnownLayoutReport {
  fingerprint: string;
  /** File it was confirmed with. */
  name: string;
  confirmedAt: string;
  /** `false`: this file's figures do not fit what was confirmed, `conflicts` say why, and the mapping is a guess. */
  taken: boolean;
  conflicts: string[];
  /** Said then and holding on, as text for a form. */
  said: SaidText;
}

export interface SaidText {
  cell: string | null;
  standard: string | null;
  boostTap: string | null;
  chargeProbe: string | null;
  inletProbe: string | null;
  momentOfInertia: string | null;
  inertiaCompensated: string | null;
}

/** The reading of a file as a report at the edge. */
export function fileReport(
  reading: FileReading,
  {
    hash,
    known,
    kind,
    remarks,
    options,
  }: {
    hash: string;
    known: string[];
    kind: KnownKind | null;
    remarks: Remark[];
    options: ViewOptions;
  },
): ReadFileReport {
  const knownLayout = kind && knownLayoutReport(kind);
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
    mapping: kind && knownLayout?.taken ? kind.mapping : guessedMapping(reading),
    knownLayout,
    preview: reading.preview,
    remarks: shownRemarks(remarks, options),
    meanings: (Object.keys(MEANINGS) as ChannelMeaning[]).map((id) => ({
      id,
      label: MEANINGS[id].label,
      units: id === 'other' ? [] : unitsOfKind(MEANINGS[id].kind).map((unit) => unit.name),
    })),
  };
}

function knownLayoutReport({ layout, conflicts, said }: KnownKind): KnownLayoutReport {
  const { carried, cell, places, sweep } = said;
  const inertia = sweep?.momentOfInertia;
  return {
    fingerprint: layout.fingerprint,
    name: layout.name,
    confirmedAt: layout.confirmedAt,
    taken: conflicts.length === 0,
    conflicts,
    said: {
      cell: cell ?? null,
      standard: carried?.standard ?? null,
      boostTap: places?.boostTap ?? null,
      chargeProbe: places?.chargeProbe ?? null,
      inletProbe: places?.inletProbe ?? null,
      momentOfInertia: inertia == null ? null : `${inertia} kg·m²`,
      inertiaCompensated: sweep?.inertiaCompensated ?? null,
    },
  };
}
