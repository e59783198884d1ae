import type { Channel, Pull } from '@pullbook/core/pull';
import { accepted, type Result, refused, remark } from '@pullbook/core/remark';
import { CellText } from '../text/cell-text.ts';
import { eachRecord } from '../text/split-records.ts';
import { type CsvwColumn, csvwMetadata } from './csvw-metadata.ts';
import { edgeUnitOfChannel } from './edge-units.ts';
import { csvField, safeText } from './safe-text.ts';

/**
 * Channels of a pull as CSV in inside units (SI; engine speed in r/min), one row a reading, with the metadata of "CSV on the
 * Web" beside it.
 *
 * Numbers have the shortest digits that read back to the same double; a missing reading is an empty field. `url` is
 * the name of the CSV file as the metadata will state it.
 */
export function pullToCsv(pull: Pull, url = `${pull.id}.csv`): { csv: string; metadata: object } {
  const headers = pull.channels.map((channel) => `${channel.name} [${edgeUnitOfChannel(channel).name}]`);
  const lines = [headers.map((header) => csvField(safeText(header))).join(',')];
  const rows = pull.channels[0]?.values.length ?? 0;
  for (let row = 0; row < rows; row++) {
    lines.push(pull.channels.map(({ values }) => shownDouble(values[row] as number)).join(','));
  }
  const names = columnNames(pull.channels);
  const columns = pull.channels.map((channel, index): CsvwColumn => {
    const { name: unit, qudt } = edgeUnitOfChannel(channel);
    return { name: names[index]!, header: headers[index]!, datatype: 'double', unit, qudt };
  });
  const metadata = csvwMetadata(url, pull.name, columns);
  return { csv: `${lines.join('\n')}\n`, metadata };
}

/** Names of a pull's columns, unique and fit for CSVW: `engineSpeedRpm`, `exhaustTemperatureK_2`. */
export function columnNames(channels: readonly Channel[]): string[] {
  const taken = new Map<string, number>();
  return channels.map((channel) => {
    const base = `${channel.meaning}${edgeUnitOfChannel(channel).suffix}`;
    const count = (taken.get(base) ?? 0) + 1;
    taken.set(base, count);
    return count === 1 ? base : `${base}_${count}`;
  });
}

/** Values of a CSV that `pullToCsv` wrote, one array a column. */
export function valuesFromCsv(bytes: Uint8Array, columns: number, path: string): Result<Float64Array[]> {
  const rows: string[][] = [];
  let width = columns;
  eachRecord({ bytes, cells: new CellText('utf-8') }, ',', (fields) => {
    if (fields.length !== columns) width = fields.length;
    else rows.push(fields);
    return width === columns;
  });
  if (width !== columns || rows.length === 0) {
    const found =
      rows.length === 0 && width === columns ? 'it is empty' : `line ${rows.length + 1} has ${width}`;
    const message = `${path} should have ${columns} columns as book.json lists them, but ${found}. Restore the file from the export.`;
    return refused(remark('refusal', 'export-damaged', message, { line: rows.length + 1 }));
  }
  const values = Array.from({ length: columns }, () => new Float64Array(rows.length - 1));
  for (let row = 1; row < rows.length; row++) {
    for (let column = 0; column < columns; column++) {
      const field = rows[row]?.[column] ?? '';
      const value = doubleFrom(field);
      if (value === null) {
        const message = `${path}, line ${row + 1}, column ${column + 1}: “${field}” is not a number. Restore the file from the export.`;
        return refused(remark('refusal', 'export-damaged', message, { line: row + 1, column: column + 1 }));
      }
      (values[column] as Float64Array)[row - 1] = value;
    }
  }
  return accepted(values);
}

/** As XML Schema writes a double; `-0` keeps its sign. */
function shownDouble(value: number): string {
  if (Number.isNaN(value)) return '';
  if (!Number.isFinite(value)) return value > 0 ? 'INF' : '-INF';
  return Object.is(value, -0) ? '-0' : String(value);
}

function doubleFrom(field: string): number | null {
  if (field === '') return Number.NaN;
  if (field === 'INF') return Number.POSITIVE_INFINITY;
  if (field === '-INF') return Number.NEGATIVE_INFINITY;
  const value = Number(field);
  return /^-?\d/.test(field) && !Number.isNaN(value) ? value : null;
}
