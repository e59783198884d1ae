import type BetterSqlite3 from 'better-sqlite3';
import type { MergeKind } from './kinds.ts';

export type Row = Record<string, unknown>;

/** A thing of one of the two books as its rows stand, with the lines that belong to it. */
export interface Thing {
  key: string;
  row: Row;
  parts: Row[][];
}

/** All things of a kind in one of the books, in the order in which they came. */
export function thingsOf(
  database: BetterSqlite3.Database,
  schema: 'main' | 'other',
  { table, key, parts }: MergeKind,
): Thing[] {
  const rows = database.prepare(`select * from ${schema}."${table}" order by sequence`).all() as Row[];
  const linesOf = parts.map(({ table: part, owner }) =>
    database.prepare(`select * from ${schema}."${part}" where "${owner}" = ? order by place`),
  );
  return rows.map(({ sequence: _, ...row }) => ({
    key: String(row[key]),
    row,
    parts: linesOf.map((lines) => lines.all(row[key]) as Row[]),
  }));
}

/** In what two things differ that may differ, field by field, JSON as values. */
export function differences(
  kind: MergeKind,
  ours: Thing,
  theirs: Thing,
): { field: string; ours: unknown; theirs: unknown }[] {
  const fields = [...new Set([...Object.keys(ours.row), ...Object.keys(theirs.row)])].filter(
    (field) => field !== kind.key && !kind.fixed.includes(field),
  );
  const inRow = fields
    .filter((field) => ours.row[field] !== theirs.row[field])
    .map((field) => ({ field, ours: shown(ours.row[field]), theirs: shown(theirs.row[field]) }));
  const inParts = kind.parts.flatMap(({ table }, at) =>
    JSON.stringify(ours.parts[at]) === JSON.stringify(theirs.parts[at])
      ? []
      : [{ field: table, ours: ours.parts[at], theirs: theirs.parts[at] }],
  );
  return [...inRow, ...inParts];
}

function shown(value: unknown): unknown {
  if (typeof value !== 'string' || !/^[[{"]|^null$/.test(value)) return value ?? null;
  try {
    return JSON.parse(value);
  } catch {
    return value;
  }
}

export function insertThing(database: BetterSqlite3.Database, kind: MergeKind, thing: Thing): void {
  insertRow(database, kind.table, thing.row);
  insertParts(database, kind, thing);
}

/** Puts theirs in the place of ours, but for what is fixed. */
export function replaceThing(database: BetterSqlite3.Database, kind: MergeKind, thing: Thing): void {
  const fields = Object.keys(thing.row).filter((field) => field !== kind.key && !kind.fixed.includes(field));
  const set = fields.map((field) => `"${field}" = @${field}`).join(', ');
  const values = Object.fromEntries(fields.map((field) => [field, thing.row[field]]));
  database
    .prepare(`update main."${kind.table}" set ${set} where "${kind.key}" = @theKey`)
    .run({ ...values, theKey: thing.key });
  for (const { table, owner } of kind.parts)
    database.prepare(`delete from main."${table}" where "${owner}" = ?`).run(thing.key);
  insertParts(database, kind, thing);
}

function insertParts(database: BetterSqlite3.Database, kind: MergeKind, thing: Thing): void {
  for (const [at, { table }] of kind.parts.entries())
    for (const line of thing.parts[at] as Row[]) insertRow(database, table, line);
}

export function insertRow(database: BetterSqlite3.Database, table: string, row: Row): void {
  const names = Object.keys(row);
  const columns = names.map((name) => `"${name}"`).join(', ');
  const places = names.map((name) => `@${name}`).join(', ');
  database.prepare(`insert into main."${table}" (${columns}) values (${places})`).run(row);
}

/** What a person calls it. */
export const nameOf = ({ row, key }: Thing): string => String(row.name ?? row.question ?? key);
