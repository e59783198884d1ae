import { fieldNamed, type SectionId, sectionTitle } from '../../combination/index.ts';

/** Where a line stands, in the words of the sheet: `Short block, Stroke`. */
export function onSheet(section: SectionId, field: string): string {
  const line = fieldNamed(section, field);
  if (line === null) throw new Error(`no line ${field} of ${section} on a sheet`);
  return `${sectionTitle(section)}, ${line.label}`;
}
