import type { Remark } from '@pullbook/core/remark';
import { CappedRemarks } from './capped-remarks.ts';
import type { HeaderPlace } from './find-header.ts';
import type { RowsRead } from './rows-read.ts';
import type { Separators } from './sniff-layout.ts';

/** What is to be said of the layout as a whole. */
export function layoutRemarks(separators: Separators, place: HeaderPlace, read: RowsRead): Remark[] {
  const remarks = new CappedRemarks();
  const line = place.firstDataLine;
  if (separators.decimalMarkAmbiguous) {
    const meaning = separators.decimalMark === ',' ? 'a decimal mark' : 'a mark between thousands';
    const message = `The comma in figures like 1,250 is taken as ${meaning}; nothing in the file tells for certain. Check the preview.`;
    remarks.add('caution', 'decimal-mark-ambiguous', message, { line });
  }
  if (place.headerLine === null) {
    const message = 'There is no header; the columns are numbered. Say what each one is.';
    remarks.add('note', 'no-header', message, { line });
  } else if (place.dataWidth > place.names.length && separators.delimiter === ',') {
    const message = `The header has ${place.names.length} fields and the rows ${place.dataWidth}: if the decimal mark is a comma too, the file cannot be read right. Export it with semicolons.`;
    remarks.add('caution', 'more-fields-than-header', message, { line });
  }
  for (const [index, column] of read.columns.entries()) {
    if (column.count > 0 || column.kind === 'text') continue;
    const message = `Column ${index + 1} (${place.names[index]?.trim() || 'no name'}) holds no numbers.`;
    remarks.add('note', 'empty-column', message, { line, column: index + 1 });
  }
  return remarks.list();
}
