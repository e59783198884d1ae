import {
  type Combination,
  type LineToChange,
  type PartChange,
  readSheet,
  sheetToPlain,
  whatChanged,
  withLines,
} from '@pullbook/core/combination';
import { accepted, type Result } from '@pullbook/core/remark';
import { plainToYaml } from '@pullbook/formats';
import type { Book } from '@pullbook/store';
import { findCombination } from './find-named.ts';

export interface SameBut {
  /** Id, beginning of an id, or name of the combination it is the same as. */
  fromId: string;
  /** Of the new sheet; missing: as before. */
  name?: string | undefined;
  lines: readonly LineToChange[];
}

/** The sheet of a combination but for some lines, as YAML, and how the change will read. Nothing is kept. */
export async function sheetSameBut(
  book: Book,
  { fromId, name, lines }: SameBut,
): Promise<Result<{ from: Combination; sheetText: string; changes: PartChange[] }>> {
  const found = await findCombination(book, fromId);
  if (!found.ok) return found;
  const plain = withLines(sheetToPlain(found.value.sheet), lines);
  if (!plain.ok) return plain;
  const renamed = { ...plain.value, name: name?.trim() || plain.value.name };
  const read = readSheet(renamed);
  if (!read.ok) return read;
  const packages = (await book.packages()).filter((one) => found.value.packageIds.includes(one.id));
  return accepted(
    {
      from: found.value,
      sheetText: plainToYaml(sheetToPlain(read.value)),
      changes: whatChanged(found.value.sheet, read.value, packages),
    },
    read.remarks,
  );
}
