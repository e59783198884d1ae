import type { CombinationSheet, SectionId } from '../combination/index.ts';

/** A line of a sheet in lower case; '' where it is not on it, unknown, or there is no sheet. */
export function sheetText(sheet: CombinationSheet | null, section: SectionId, field: string): string {
  const values = sheet?.sections[section];
  const text = values !== undefined && Object.hasOwn(values, field) ? values[field]!.text : '';
  return text === 'unknown' ? '' : text.toLowerCase();
}

/** The number of a line in its inside unit; `null` where it is not known, or there is no sheet. */
export function sheetNumber(
  sheet: CombinationSheet | null,
  section: SectionId,
  field: string,
): number | null {
  const values = sheet?.sections[section];
  return values !== undefined && Object.hasOwn(values, field) ? values[field]!.value : null;
}
