import { type CombinationSheet, readSheet, type SectionId, type SheetValue } from '../combination/index.ts';
import type { ReachChange, SheetEdit } from './model.ts';

/**
 * A sheet as it would be after changes: sections that a change clears go first, then its edits are read as a person's entries are.
 *
 * @example sheetWith(sheet, rung.changes).sections.drive?.blowerPulleyDiameter?.text // '78 mm'
 */
export const sheetWith = (sheet: CombinationSheet, changes: readonly ReachChange[]): CombinationSheet =>
  sheetWriter()(sheet, changes);

/** The same for a search, which writes the same few lines a thousand times: each is read once. */
export function sheetWriter(): typeof sheetWith {
  const read = new Map<string, SheetValue>();
  const lineOf = (edit: SheetEdit & { text: string }): SheetValue => {
    const name = `${edit.section}.${edit.field}: ${edit.text}`;
    const known = read.get(name);
    if (known !== undefined) return known;
    const value = readLine(edit);
    read.set(name, value);
    return value;
  };
  return (sheet, changes) => {
    if (changes.every(({ edits, clears }) => edits.length === 0 && clears.length === 0)) return sheet;
    const sections = { ...sheet.sections };
    for (const { clears, edits } of changes) {
      for (const section of clears) delete sections[section];
      for (const { section, field, text } of edits) {
        const { [field]: _, ...rest } = sections[section] ?? {};
        sections[section] =
          text === null ? rest : { ...sections[section], [field]: lineOf({ section, field, text }) };
      }
    }
    return { ...sheet, sections };
  };
}

/** Edits are made by whoever made the parts list ready, so that one that cannot be read is a fault of the program. */
function readLine({ section, field, text }: { section: SectionId; field: string; text: string }): SheetValue {
  const read = readSheet({ schemaVersion: 1, name: 'one line', [section]: { [field]: text } });
  const value = read.ok ? Object.values(read.value.sections[section] ?? {})[0] : undefined;
  if (value === undefined)
    throw new Error(`the edit of ${section}.${field} cannot be read: ${read.remarks[0]?.message ?? text}`);
  return value;
}
