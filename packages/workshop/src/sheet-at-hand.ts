import {
  type Combination,
  FIELDS,
  ORIGINS,
  type PartChange,
  SECTIONS,
  sheetToPlain,
  whatChanged,
} from '@pullbook/core/combination';
import { type QuantityKind, unitsOfKind } from '@pullbook/core/quantity';
import { accepted, type Remark, type Result } from '@pullbook/core/remark';
import { plainToYaml, readCombinationText, readPlainText } from '@pullbook/formats';
import type { Book } from '@pullbook/store';
import type { ShownRemark, ViewOptions } from '@pullbook/views';
import { shownRemarks } from './edge/remark.ts';
import { findCombination } from './find-named.ts';

/** A remark of a sheet with the line it belongs to. */
export interface SheetRemark extends ShownRemark {
  /** `shortBlock.bore`, `heads.flowIntake.points`; `null`: of the whole. */
  place: string | null;
}

/** A sheet somebody works at; nothing of it is kept. */
export interface SheetAtHand {
  /** Whether it could be kept as it is. */
  complete: boolean;
  /** Its plain form, for a page with a line a field; `null`: it can only be shown as text. */
  plain: Record<string, unknown> | null;
  /** As YAML; `null`: it is neither YAML nor JSON. */
  sheetText: string | null;
  remarks: SheetRemark[];
  /** Lines in which it differs from the one it is made from; `null`: of none, or it cannot be read yet. */
  changes: PartChange[] | null;
}

/** Looks at a sheet before it is kept: what cannot be read and where, and what it changes of another one of the book. */
export async function lookAtSheet(
  book: Book | null,
  sheetText: string,
  options: ViewOptions | null,
  madeFromId?: string,
): Promise<Result<SheetAtHand>> {
  const from =
    book && madeFromId ? await findCombination(book, madeFromId) : accepted<Combination | null>(null);
  if (!from.ok) return from;
  const written = readPlainText(sheetText);
  if (!written.ok) {
    const remarks = withPlaces(written.remarks, options);
    return accepted({ complete: false, plain: null, sheetText: null, remarks, changes: null });
  }
  const read = readCombinationText(sheetText);
  const plain = read.ok ? sheetToPlain(read.value) : written.value;
  const packages = ((await book?.packages()) ?? []).filter((one) => from.value?.packageIds.includes(one.id));
  return accepted({
    complete: read.ok,
    plain: isLineByLine(plain) ? plain : null,
    sheetText: plainToYaml(plain),
    remarks: withPlaces(read.remarks, options),
    changes: read.ok && from.value ? whatChanged(from.value.sheet, read.value, packages) : null,
  });
}

function withPlaces(remarks: readonly Remark[], options: ViewOptions | null): SheetRemark[] {
  return remarks.flatMap((one) => {
    const place = /^([A-Za-z]+\.[^:]+|name|schemaVersion):/.exec(one.message)?.[1] ?? null;
    return shownRemarks([one], options).map((shown) => ({ ...shown, place }));
  });
}

/** Whether a page with a line a field can show all of it: known sections, each a group of values. */
function isLineByLine(plain: unknown): plain is Record<string, unknown> {
  if (!isGroup(plain)) return false;
  return Object.entries(plain).every(([key, content]) => {
    if (key === 'schemaVersion' || key === 'name') return typeof content !== 'object';
    const isSection = SECTIONS.some(({ id }) => id === key);
    return isSection && (content === null || (isGroup(content) && Object.values(content).every(isValue)));
  });
}

const isValue = (value: unknown): boolean =>
  isGroup(value)
    ? Object.values(value).every((part) => typeof part !== 'object' || part === null)
    : !Array.isArray(value);

const isGroup = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** What a sheet may hold, for a page that offers it. */
export interface SheetWords {
  origins: readonly string[];
  sections: { id: string; title: string; fields: FieldWords[] }[];
}

export interface FieldWords {
  field: string;
  label: string;
  example: string;
  /** Units accepted, the usual one first; empty: text, a count or a bare number. */
  units: string[];
  /** Lines beside the points, where the field is a table; else `null`. */
  details: { field: string; label: string; example: string; needed: boolean }[] | null;
}

/** Sections and fields of a sheet in the order it is best read, and the origins. */
export function sheetWords(): SheetWords {
  return {
    origins: ORIGINS,
    sections: SECTIONS.map(({ id, title }) => ({
      id,
      title,
      fields: FIELDS.filter(({ section }) => section === id).map(
        ({ field, label, example, kinds, table }) => ({
          field,
          label,
          example,
          units: kinds.flatMap(unitNames),
          details:
            table?.details.map(({ needed, ...detail }) => ({
              field: detail.field,
              label: detail.label,
              example: detail.example,
              needed,
            })) ?? null,
        }),
      ),
    })),
  };
}

const unitNames = (kind: QuantityKind | 'text' | 'count' | 'table'): string[] =>
  kind === 'text' || kind === 'count' || kind === 'table'
    ? []
    : unitsOfKind(kind).flatMap(({ name }) => (name === '' ? [] : [name]));
