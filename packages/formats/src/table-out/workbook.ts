import { type Remark, remark } from '@pullbook/core/remark';
import { type CellValue, writeXlsx } from 'hucre/xlsx';
import type { OutCell, OutColumn, OutTable } from './model.ts';
import { sheetNames } from './sheet-names.ts';

/** What a sheet can hold (ECMA-376 leaves it open; from memory of what spreadsheets take). */
const MOST = { rows: 1_048_576, columns: 16_384, signs: 32_767 } as const;

/**
 * The tables as an XLSX workbook, a sheet each: names with units in the first row, numbers as numbers in full precision,
 * dates as dates by the clock on the wall, text as text whatever it begins with. No formulas. The same tables give the same
 * bytes. Remarks say what a sheet cannot hold and what was done about it.
 *
 * @param at ISO 8601: when it is made, kept in the file
 */
export async function workbookOf(
  tables: readonly OutTable[],
  { title, at }: { title: string; at: string },
): Promise<{ bytes: Uint8Array; remarks: Remark[] }> {
  const remarks: Remark[] = [];
  const names = sheetNames(tables.map((table) => table.title));
  const made = new Date(at);
  const bytes = await writeXlsx({
    sheets: tables.map((table, index) => sheetOf(table, names[index]!, remarks)),
    properties: { title: writable(title), created: made, modified: made },
  });
  return { bytes, remarks };
}

function sheetOf(table: OutTable, name: string, remarks: Remark[]) {
  const columns = table.columns.slice(0, MOST.columns);
  const rows = table.rows.slice(0, MOST.rows - 1);
  const [lost, beside] = [table.rows.length - rows.length, table.columns.length - columns.length];
  if (lost > 0 || beside > 0) {
    const message = `The sheet "${name}" does without its last ${lost > 0 ? `${lost} rows` : `${beside} columns`}: a sheet holds ${MOST.rows} rows and ${MOST.columns} columns. Take CSV or JSON for all of them.`;
    remarks.push(remark('caution', 'sheet-cut', message));
  }
  return {
    name,
    rows: [
      columns.map((column) => textCell(headerOf(column))),
      ...rows.map((row) => columns.map(({ kind }, place) => cellOf(row[place] ?? null, kind))),
    ],
    columns: columns.map((column, place) => ({
      width: widthOf(column, rows, place),
      style: { alignment: { wrapText: column.kind === 'text', vertical: 'top' as const } },
      ...formatOf(column),
    })),
    cells: new Map(columns.map((_, place) => [`0,${place}`, { style: HEADER }])),
    freezePane: { rows: 1 },
  };
}

const HEADER = { font: { bold: true, size: 11 }, alignment: { wrapText: true, vertical: 'top' as const } };

/** `Torque [N·m]` */
export const headerOf = ({ title, unit }: OutColumn): string => (unit === '' ? title : `${title} [${unit}]`);

/** Decimals that a unit is read with; the cell keeps its figure whole. What is not listed is shown as it is. */
const DECIMALS: Record<string, number> = {
  rpm: 0,
  hp: 1,
  kW: 1,
  'lb-ft': 1,
  N·m: 1,
  psi: 2,
  kPa: 1,
  inHg: 3,
  λ: 3,
  '°F': 1,
  '°C': 1,
  '%': 2,
  'lb/h': 1,
  'kg/h': 1,
  '°': 1,
  s: 2,
};

function formatOf({ kind, unit }: OutColumn): { numFmt?: string } {
  if (kind === 'date') return { numFmt: 'yyyy-mm-dd hh:mm:ss' };
  const decimals = kind === 'number' ? DECIMALS[unit] : undefined;
  if (decimals === undefined) return {};
  return { numFmt: decimals === 0 ? '0' : `0.${'0'.repeat(decimals)}` };
}

/** In signs: a figure's is the same everywhere, a text's as long as it is, within what can be looked at. */
function widthOf({ kind }: OutColumn, rows: OutTable['rows'], place: number): number {
  if (kind !== 'text') return kind === 'date' ? 20 : 14;
  const longest = rows.reduce((most, row) => Math.max(most, String(row[place] ?? '').length), 0);
  return Math.min(60, Math.max(12, longest + 2));
}

function cellOf(cell: OutCell, kind: OutColumn['kind']): CellValue {
  if (typeof cell !== 'string') return cell;
  return (kind === 'date' ? wallClock(cell) : null) ?? textCell(cell);
}

/** A sheet's dates know no zone: the clock of the cell on that day is kept, not that of the reader. */
function wallClock(iso: string): Date | null {
  const found = /^(\d{4})-(\d\d)-(\d\d)(?:T(\d\d):(\d\d)(?::(\d\d))?)?/.exec(iso);
  if (!found) return null;
  const [year, month, day, hour = 0, minute = 0, second = 0] = found
    .slice(1)
    .map((part) => Number(part ?? 0));
  return new Date(Date.UTC(year!, month! - 1, day, hour, minute, second));
}

function textCell(text: string): string {
  const plain = writable(text);
  return plain.length <= MOST.signs ? plain : `${writable(plain.slice(0, MOST.signs - 1))}…`;
}

/** Signs that XML cannot hold are replaced; what looks like the format's own escape (`_x0041_`) is kept from being read as one. */
function writable(text: string): string {
  return text
    .replace(/\r\n?/g, '\n')
    .replace(/[^\P{Cc}\t\n]|\p{Cs}|\p{Noncharacter_Code_Point}/gu, '\ufffd')
    .replace(/_(?=x[0-9A-Fa-f]{4}_)/g, '_x005F_');
}
