import { type CarriedCorrection, MEANINGS, type Places, type SweepSettings } from '@pullbook/core/pull';
import { accepted, type Remark, type Result, remark } from '@pullbook/core/remark';
import {
  type ColumnMapping,
  type ConfirmedLayout,
  confirmedLayout,
  type FileReading,
  layoutConflicts,
  layoutFingerprint,
  rememberedMapping,
} from '@pullbook/formats';
import type { Book, KnownLayout } from '@pullbook/store';
import type { PullDetails } from './edge/pull-details.ts';
import { withSaid } from './edge/text-fields.ts';
import { findOne } from './find-one.ts';

/** What was said beside a file and holds for the next one of its kind. A factor goes with the air of its day: not kept. */
export interface SaidOfLayout {
  carried?: CarriedCorrection;
  cell?: string;
  places?: Places;
  sweep?: Partial<SweepSettings>;
}

/** A file's kind, met before. */
export interface KnownKind {
  layout: KnownLayout;
  /** As confirmed then, put on this file's columns. */
  mapping: ColumnMapping[];
  said: SaidOfLayout;
  /** Why it is not taken without a look; none: it is. */
  conflicts: string[];
}

/**
 * The kind of a file, where one laid out alike was confirmed before: in the same order of columns, else with the same names
 * and units in another order.
 */
export async function knownKind(book: Book, reading: FileReading): Promise<KnownKind | null> {
  const fingerprint = layoutFingerprint(reading);
  if (fingerprint === null) return null;
  const exact = await book.layout(fingerprint);
  for (const layout of exact ? [exact] : (await book.layouts()).reverse()) {
    const confirmed = layout.columns as ConfirmedLayout;
    const mapping = rememberedMapping(reading, confirmed);
    if (mapping === null) continue;
    const conflicts = layoutConflicts(reading, mapping, confirmed);
    return { layout, mapping, said: layout.said as SaidOfLayout, conflicts };
  }
  return null;
}

/** What is to be said of a file's kind: taken as before, to be looked at again, or never to be known. */
export function kindRemarks(reading: FileReading, kind: KnownKind | null): Remark[] {
  if (reading.layout.headerLine === null) {
    const message =
      'Without a header this kind of file cannot be known again: what its columns are has to be confirmed for each file.';
    return [remark('note', 'kind-not-known-again', message)];
  }
  if (kind === null) return [];
  const confirmed = confirmedWords(kind.layout);
  if (kind.conflicts.length > 0) return [doubt(kind)];
  const also = saidWords(kind.said);
  const message = `Read as confirmed ${confirmed}.${also === '' ? '' : ` As said then, where nothing else is said: ${also}.`}`;
  return [remark('note', 'kind-known', message)];
}

/** A file of a known kind whose figures do not fit what was confirmed of it. */
export function doubt(kind: KnownKind): Remark {
  const message = `A file laid out like this one was confirmed ${confirmedWords(kind.layout)}, but that does not fit here. ${kind.conflicts.join(' ')} Look at the columns and confirm them again.`;
  return remark('caution', 'kind-doubted', message);
}

const confirmedWords = ({ confirmedAt, name }: KnownLayout): string =>
  `on ${confirmedAt.slice(0, 10)} for ${name}`;

function saidWords({ carried, cell, places, sweep }: SaidOfLayout): string {
  return [
    cell && `cell ${cell}`,
    carried &&
      `figures ${carried.standard === 'observed' ? 'as observed' : `carry ${carried.standard}, factor to be given`}`,
    places?.boostTap && `boost read at ${places.boostTap}`,
    places?.chargeProbe && `charge probe ${places.chargeProbe}`,
    places?.inletProbe && `inlet probe ${places.inletProbe}`,
    sweep?.momentOfInertia != null && `moment of inertia ${sweep.momentOfInertia} kg·m²`,
    sweep?.inertiaCompensated && `inertia in the figures: ${sweep.inertiaCompensated}`,
  ]
    .filter(Boolean)
    .join(', ');
}

/** Details with what was said of the kind put in where nothing was said of this file. */
export function withSaidOfKind(details: PullDetails, kind: KnownKind | null): PullDetails {
  if (kind === null || kind.conflicts.length > 0) return details;
  const { places, sweep, ...said } = kind.said;
  return {
    ...said,
    ...details,
    ...(places ? { places: { ...places, ...details.places } } : {}),
    ...(sweep ? { sweep: { ...sweep, ...details.sweep } } : {}),
  };
}

/**
 * What to keep of what a person confirmed of a file, for the next one of its kind. `undefined`: the file has no header, or
 * nothing new was said.
 */
export async function confirmedKind(
  book: Book,
  reading: FileReading,
  mapping: readonly ColumnMapping[],
  details: PullDetails,
): Promise<KnownLayout | undefined> {
  const fingerprint = layoutFingerprint(reading);
  if (fingerprint === null) return undefined;
  const before = await book.layout(fingerprint);
  const columns = confirmedLayout(reading, mapping, before && (before.columns as ConfirmedLayout));
  const said = { ...(before?.said as SaidOfLayout | undefined), ...saidOf(details) };
  if (before && same(before.columns, columns) && same(before.said, said)) return undefined;
  return { fingerprint, name: reading.name, columns, said, confirmedAt: new Date().toISOString() };
}

function saidOf({ carried, cell, places, sweep }: PullDetails): SaidOfLayout {
  const known: Places = withSaid({}, places);
  const isStated = carried && carried.standard !== 'not stated';
  return {
    ...(isStated ? { carried: { ...carried, factor: carried.standard === 'observed' ? 1 : null } } : {}),
    ...(cell ? { cell } : {}),
    ...(Object.keys(known).length > 0 ? { places: known } : {}),
    ...(sweep && Object.keys(sweep).length > 0 ? { sweep } : {}),
  };
}

const same = (one: unknown, other: unknown): boolean => JSON.stringify(one) === JSON.stringify(other);

/** A kind of file at the edge. */
export interface LayoutRow {
  fingerprint: string;
  /** File it was confirmed with. */
  name: string;
  confirmedAt: string;
  columns: { name: string; unitText: string; meaning: string | null; label: string; unit: string }[];
  /** In words; '' nothing. */
  said: string;
}

/** The kinds of file the book knows, the last confirmed first. */
export async function layoutRows(book: Book): Promise<LayoutRow[]> {
  const layouts = await book.layouts();
  return layouts
    .map(({ fingerprint, name, confirmedAt, columns, said }) => ({
      fingerprint,
      name,
      confirmedAt,
      columns: (columns as ConfirmedLayout).columns.map((column) => ({
        name: column.name,
        unitText: column.unitText,
        meaning: column.meaning,
        label: column.meaning === null ? 'Left out' : MEANINGS[column.meaning].label,
        unit: column.unit,
      })),
      said: saidWords(said as SaidOfLayout),
    }))
    .sort((one, other) => other.confirmedAt.localeCompare(one.confirmedAt));
}

/** Forgets a kind of file, by its fingerprint, the beginning of one, or the name of the file it was confirmed with. */
export async function forgetLayout(book: Book, given: string): Promise<Result<{ fingerprint: string }>> {
  const layouts = (await book.layouts()).map((layout) => ({ id: layout.fingerprint, name: layout.name }));
  const found = findOne(layouts, given, 'remembered layout');
  if (!found.ok) return found;
  await book.forgetLayout(found.value.id);
  return accepted({ fingerprint: found.value.id });
}
