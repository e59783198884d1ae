import type { OutCell, OutTable } from './model.ts';

/** Tables as JSON: the columns with their units, and each row by the names of its columns; `null` is unknown. */
export interface TablesJson {
  schemaVersion: 1;
  tables: {
    title: string;
    columns: { name: string; title: string; unit: string | null }[];
    rows: Record<string, OutCell>[];
  }[];
}

/** The tables as they stand in JSON at the edge. */
export function tablesToJson(tables: readonly OutTable[]): TablesJson {
  return {
    schemaVersion: 1,
    tables: tables.map(({ title, columns, rows }) => ({
      title,
      columns: columns.map((one) => ({ name: one.name, title: one.title, unit: one.unit || null })),
      rows: rows.map((row) =>
        Object.fromEntries(columns.map(({ name }, place) => [name, row[place] ?? null])),
      ),
    })),
  };
}
