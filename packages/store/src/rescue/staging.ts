import type BetterSqlite3 from 'better-sqlite3';
import { Database } from '../driver.ts';
import { APPLICATION_ID, migrate } from '../migrate.ts';
import type { Pages } from './pages.ts';
import type { Stored } from './records.ts';
import { type FoundRecord, foundRecords } from './rows.ts';
import { type TableShape, tableShapes } from './tables.ts';

/** A new book that is being filled: its triggers rest until it is whole. */
export interface Staging {
  database: BetterSqlite3.Database;
  /** Puts the triggers back. */
  settle: () => void;
}

/** An empty book of the newest schema in a file, nothing refused yet but what no book may hold. */
export function openStaging(file: string): Staging {
  const database = new Database(file);
  database.pragma('journal_mode = DELETE');
  database.pragma('foreign_keys = OFF');
  migrate(database, () => {});
  const triggers = database.prepare("select name, sql from sqlite_schema where type = 'trigger'").all() as {
    name: string;
    sql: string;
  }[];
  for (const { name } of triggers) database.exec(`drop trigger "${name}"`);
  return {
    database,
    settle: () => {
      for (const { sql } of triggers) database.exec(sql);
      database.pragma(`application_id = ${APPLICATION_ID}`);
    },
  };
}

/**
 * Brings every record that can be read into the staging. A record reached through its tree goes before a stray one of the
 * same key, which may be of the past. Gives the number of records that could not be read or kept.
 */
export function fillStaging({ database }: Staging, pages: Pages): { unreadable: number } {
  const shapes = tableShapes(database);
  const inserts = new Map(shapes.map((shape) => [shape.name, insertInto(database, shape)]));
  const found = foundRecords(pages, shapes);
  let refusedByTable = 0;
  const fill = database.transaction(() => {
    for (let next = found.next(); ; next = found.next()) {
      if (next.done) return next.value.unreadable;
      const { table, rowid, values, isStray } = next.value;
      const isKept = inserts.get(table.name)!(valuesFor(table, { rowid, values }), isStray);
      if (!isKept && !isStray) refusedByTable += 1;
    }
  });
  return { unreadable: fill() + refusedByTable };
}

/** Values for all columns that the record has. */
function valuesFor(
  { columns }: TableShape,
  { rowid, values }: Pick<FoundRecord, 'rowid' | 'values'>,
): Stored[] {
  return values.map((value, at) => (columns[at]!.isRowid ? rowid : value));
}

function insertInto(
  database: BetterSqlite3.Database,
  { name, columns }: TableShape,
): (values: Stored[], isStray: boolean) => boolean {
  const prepared = new Map<number, BetterSqlite3.Statement>();
  return (values, isStray) => {
    const count = values.length;
    let insert = prepared.get(count);
    if (!insert) {
      const names = columns.slice(0, count).map((column) => `"${column.name}"`);
      const places = names.map(() => '?');
      insert = database.prepare(
        `insert or ignore into "${name}" (${names.join(', ')}) values (${places.join(', ')})`,
      );
      prepared.set(count, insert);
    }
    try {
      return insert.run(values).changes === 1 || isStray;
    } catch (failure) {
      if (failure instanceof Error && 'code' in failure) return false;
      throw failure;
    }
  };
}
