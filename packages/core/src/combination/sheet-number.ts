import type { CombinationSheet, SectionId, SheetValue } from './model.ts';

/** The value of a field as it stands on the sheet; `null` when it is not on it. */
export function sheetValue(sheet: CombinationSheet, section: SectionId, field: string): SheetValue | null {
  const values = sheet.sections[section];
  return values !== undefined && Object.hasOwn(values, field) ? values[field]! : null;
}

/** The number of a field in its inside unit; `null` when it is unknown or not on the sheet. */
export function sheetNumber(sheet: CombinationSheet, section: SectionId, field: string): number | null {
  return sheetValue(sheet, section, field)?.value ?? null;
}
