import { type Remark, remark } from '@pullbook/core/remark';
import type { HeaderPlace } from './find-header.ts';
import type { Separators } from './sniff-layout.ts';
import { eachRecord, type TextBytes } from './split-records.ts';

const ROWS_LOOKED_AT = 100;

/**
 * Refuses a file whose commas both part fields and stand in numbers: its rows have more numbers than the header has names,
 * and no number has a point. Where one ends and the next begins is lost.
 */
export function decimalCommaTrouble(
  name: string,
  head: TextBytes,
  { delimiter }: Separators,
  { headerLine, names, firstDataLine, dataWidth }: HeaderPlace,
): Remark | null {
  if (delimiter !== ',' || headerLine === null || dataWidth <= names.length) return null;
  let rows = 0;
  let wide = 0;
  let points = 0;
  eachRecord(head, delimiter, (fields, line) => {
    if (line < firstDataLine) return true;
    rows += 1;
    if (fields.slice(names.length).some((field) => /^\d+$/.test(field.trim()))) wide += 1;
    if (fields.some((field) => /\d\.\d/.test(field))) points += 1;
    return rows < ROWS_LOOKED_AT;
  });
  if (points > 0 || wide < rows / 2) return null;
  const message = `${name} has ${names.length} names in its header and ${dataWidth} fields in its rows, and no number has a point: the comma stands in numbers as well as between them, and where a number ends is lost. Export it with semicolons or tabs between the columns.`;
  return remark('refusal', 'comma-in-numbers', message, { line: firstDataLine, column: names.length + 1 });
}
