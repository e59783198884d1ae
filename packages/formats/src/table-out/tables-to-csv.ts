import { type CsvwColumn, csvwMetadata } from '../export/csvw-metadata.ts';
import { fileNameFrom } from '../export/export-names.ts';
import type { ExportFile } from '../export/exported-book.ts';
import { csvField, safeText } from '../export/safe-text.ts';
import type { OutCell, OutColumn, OutTable } from './model.ts';
import { headerOf } from './workbook.ts';

/**
 * Each table as CSV (RFC 4180) with its metadata by the W3C's "CSV on the Web" beside it: `all-speeds.csv`,
 * `all-speeds.csv-metadata.json`. Decimal point; numbers have the shortest digits that read back to the same double; an
 * empty field is unknown; text that would begin like a formula has a quote sign in front.
 */
export function tablesToCsv(tables: readonly OutTable[]): ExportFile[] {
  const taken = new Set<string>();
  return tables.flatMap((table) => {
    const base = fileNameFrom(table.title.trim().toLowerCase().replace(/\s+/g, '-'));
    let name = `${base}.csv`;
    for (let count = 2; taken.has(name.toLowerCase()); count++) name = `${base}-${count}.csv`;
    taken.add(name.toLowerCase());
    const columns = table.columns.map((column, place) => describedColumn(column, table.rows, place));
    const metadata = csvwMetadata(name, table.title, columns);
    return [
      { path: name, bytes: bytesOf(csvOf(table)) },
      { path: `${name}-metadata.json`, bytes: bytesOf(`${JSON.stringify(metadata, null, 2)}\n`) },
    ];
  });
}

function csvOf({ columns, rows }: OutTable): string {
  const lines = [columns.map((column) => fieldOf(headerOf(column))), ...rows.map((row) => row.map(fieldOf))];
  return `${lines.map((line) => line.join(',')).join('\n')}\n`;
}

function fieldOf(cell: OutCell): string {
  if (cell === null) return '';
  if (typeof cell === 'number') return Object.is(cell, -0) ? '-0' : String(cell);
  return csvField(safeText(cell.replace(/\r\n?/g, '\n')));
}

const DATE_TIME = /^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d(?:\.\d+)?(?:Z|[+-]\d\d:\d\d)?$/;

function describedColumn(column: OutColumn, rows: readonly OutCell[][], place: number): CsvwColumn {
  const { name, kind, unit, qudt } = column;
  // A day without its hour is no `dateTime`.
  const isMoment =
    kind === 'date' && rows.every((row) => row[place] == null || DATE_TIME.test(String(row[place])));
  const datatype = kind === 'number' ? 'double' : isMoment ? 'dateTime' : 'string';
  return { name, header: headerOf(column), datatype, unit, qudt };
}

const bytesOf = (text: string): Uint8Array => new TextEncoder().encode(text);
