import { type Remark, remark } from '@pullbook/core/remark';
import { cellKind } from '../text/cell-number.ts';
import type { Separators } from '../text/sniff-layout.ts';
import { eachRecord, type TextBytes } from '../text/split-records.ts';
import { meaningFromName } from './column-words.ts';
import { nameAndUnit } from './header-unit.ts';

const LOOKED_AT_RECORDS = 60;
/** A line above a table may name a quantity with its peak and the speed of it; a channel has more. */
const LEAST_READINGS = 5;

/** Refuses a table that lies on its side: a channel a row, its name first. Columns of it would be mixtures of quantities. */
export function transposedTable(
  name: string,
  head: TextBytes,
  { delimiter, decimalMark }: Separators,
): Remark | null {
  const met = new Map<string, number>();
  let records = 0;
  eachRecord(head, delimiter, ([first = '', ...others], line) => {
    records += 1;
    const meaning = meaningFromName(nameAndUnit(first).name)?.meaning ?? 'other';
    const numbers = others.filter((cell) => cellKind(cell, decimalMark) === 'number').length;
    if (meaning !== 'other' && numbers >= LEAST_READINGS && !met.has(meaning)) met.set(meaning, line);
    return records < LOOKED_AT_RECORDS;
  });
  const line = met.get('engineSpeed');
  if (line === undefined || met.size < 2) return null;
  const message = `${name} has a channel in each row instead of in each column (line ${line} is engine speed). Turn the table over in a spreadsheet (paste transposed), save it as CSV, and give that file.`;
  return remark('refusal', 'transposed', message, { line, column: 1 });
}
