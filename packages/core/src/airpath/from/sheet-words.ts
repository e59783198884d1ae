import { type CombinationSheet, type SectionId, sheetValue } from '../../combination/index.ts';

/** A line of a sheet in lower case; '' where it is not on it or unknown. */
export function wordsOf(sheet: CombinationSheet, section: SectionId, field: string): string {
  const text = sheetValue(sheet, section, field)?.text.trim().toLowerCase() ?? '';
  return text === 'unknown' ? '' : text;
}
