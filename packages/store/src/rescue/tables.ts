import type Database from 'better-sqlite3';
import type { Stored } from './records.ts';

/** The shape of a table's records, from the schema of this program. */
export interface TableShape {
  name: string;
  columns: {
    name: string;
    type: string;
    notNull: boolean;
    hasDefault: boolean;
    /** Stands in the record's number, not in the record. */
    isRowid: boolean;
    isJson: boolean;
    /** The few texts it can hold; `null`: any. */
    oneOf: string[] | null;
  }[];
}

/** Made anew from what was measured, so it is not looked for. */
const MADE_ANEW = new Set(['listed']);

/** Shapes of all tables of a database with the newest schema. */
export function tableShapes(database: Database.Database): TableShape[] {
  const tables = database
    .prepare("select name, sql from sqlite_schema where type = 'table' and name not like 'sqlite_%'")
    .all() as { name: string; sql: string }[];
  return tables
    .filter(({ name }) => !MADE_ANEW.has(name))
    .map(({ name, sql }) => ({ name, columns: columnsOf(database, name, sql) }));
}

function columnsOf(database: Database.Database, table: string, sql: string): TableShape['columns'] {
  const found = database.pragma(`table_info("${table}")`) as {
    name: string;
    type: string;
    notnull: number;
    dflt_value: string | null;
    pk: number;
  }[];
  return found.map(({ name, type, notnull, dflt_value: usual, pk }) => ({
    name,
    type: type.toUpperCase(),
    notNull: notnull === 1,
    hasDefault: usual !== null,
    isRowid: pk === 1 && type.toUpperCase() === 'INTEGER',
    isJson: sql.includes(`json_valid(${name})`),
    oneOf: listIn(sql, name),
  }));
}

/**
 * Whether a record can be one of the table: the kind of each value is that of its column, JSON is JSON, and what an older
 * schema lacked at the end may be missing.
 */
export function fits({ columns }: TableShape, values: readonly Stored[]): boolean {
  return (
    values.length <= columns.length &&
    columns.every((column, at) => {
      if (at >= values.length) return column.hasDefault || !column.notNull;
      const value = values[at] as Stored;
      if (column.isRowid) return value === null;
      if (value === null) return !column.notNull;
      if (column.isJson && !isJson(value)) return false;
      if (column.oneOf !== null && !column.oneOf.includes(value as string)) return false;
      return kindFits(column.type, value);
    })
  );
}

/** The texts of a column's `check (name in ('a', 'b'))`. */
function listIn(sql: string, name: string): string[] | null {
  const list = new RegExp(`check \\(${name} in \\(([^)]*'[^)]*)\\)\\)`).exec(sql)?.[1];
  return list === undefined ? null : [...list.matchAll(/'([^']*)'/g)].map(([, text]) => text as string);
}

function kindFits(type: string, value: Stored): boolean {
  switch (type) {
    case 'TEXT':
      return typeof value === 'string';
    case 'INTEGER':
      return Number.isSafeInteger(value);
    case 'REAL':
      return typeof value === 'number';
    default:
      return value instanceof Uint8Array;
  }
}

function isJson(value: Stored): boolean {
  try {
    JSON.parse(value as string);
    return true;
  } catch {
    return false;
  }
}
