import { remark } from '@pullbook/core/remark';
import { type ColumnShape, type HeadedTable, readHeadedTable } from '../table/headed-table.ts';
import { delimiterOf, splitCells, type TableRow } from '../table/split-cells.ts';
import type { WrittenPath } from '../yaml/read-written.ts';
import { isRecord } from './group-shape.ts';
import { atPlace, inWords, pathWords, type Reading, refuse, type Shape } from './shape.ts';

/**
 * A table as a block of text, a heading with units and one row a line, or as `columns` (headings) and `rows` (lists of
 * numbers).
 */
export const table = (columns: readonly ColumnShape[], about: string): Shape<HeadedTable> => ({
  schema: {
    description: `${about} A heading with units, such as "${columns.map(({ example }) => example).join(', ')}", and one row a line.`,
    anyOf: [
      { type: 'string' },
      {
        type: 'object',
        properties: {
          columns: { type: 'array', items: { type: 'string' } },
          rows: { type: 'array', items: { type: 'array', items: { type: ['number', 'string', 'null'] } } },
        },
        required: ['columns', 'rows'],
        additionalProperties: false,
      },
    ],
  },
  read: (value, path, reading) => {
    const rows = rowsOf(value, path, reading);
    if (rows === null)
      return refuse(
        reading,
        path,
        'match-table',
        `${inWords(value)} stands where a table is due. Write "${columns.map(({ example }) => example).join(', ')}" after "|" and one row a line under it.`,
      );
    const read = readHeadedTable(rows, columns, pathWords(path));
    // A table written in one line has no lines of its own.
    reading.remarks.push(...read.remarks.map((one) => atPlace(reading, path, one)));
    return read.ok ? read.value : undefined;
  },
});

function rowsOf(value: unknown, path: WrittenPath, reading: Reading): TableRow[] | null {
  if (typeof value === 'string') return rowsOfText(value, reading.blockLine(path));
  if (!isRecord(value) || !Array.isArray(value.columns) || !Array.isArray(value.rows)) return null;
  const cells = (row: unknown): string[] =>
    (Array.isArray(row) ? row : [row]).map((cell) => String(cell ?? ''));
  const lineOf = (at: WrittenPath) => reading.placeOf([...path, ...at])?.line ?? null;
  return [
    { cells: cells(value.columns), line: lineOf(['columns']) },
    ...value.rows.map((row, at) => ({ cells: cells(row), line: lineOf(['rows', at]) })),
  ];
}

function rowsOfText(text: string, firstLine: number | null): TableRow[] {
  let delimiter: string | null = null;
  return text.split(/\r\n|\r|\n/).flatMap((written, at): TableRow[] => {
    if (written.trim() === '') return [];
    const isHeading = delimiter === null;
    delimiter ??= delimiterOf(written);
    return [
      {
        cells: splitCells(written.trim(), delimiter, isHeading),
        line: firstLine === null ? null : firstLine + at,
      },
    ];
  });
}

/** A column of a table whose rows all have it; `null`: the table has not. */
export function wholeColumn(
  { columns, lines }: HeadedTable,
  field: string,
  path: WrittenPath,
  reading: Reading,
): number[] | null {
  const values = columns.get(field)?.values;
  if (values === undefined) return null;
  const gap = values.indexOf(null);
  if (gap < 0) return values as number[];
  const message = `${pathWords(path)}: ${field} is not in every row, so the column is left out.`;
  const line = lines[gap];
  reading.remarks.push(
    atPlace(reading, path, remark('caution', 'match-column-gap', message, line == null ? {} : { line })),
  );
  return null;
}
