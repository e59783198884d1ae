import { sql } from 'kysely';
import type { Rows } from '../connection.ts';
import type { WithdrawnKind } from '../model.ts';
import { amongIds } from './among-ids.ts';
import { isThere } from './withdrawn.ts';

type Named = Map<string, { name: string; isThere: boolean }>;

/** Where the kinds of subject of the log stand, and by what they are called. */
const TABLES = [
  ['pull', 'pull', 'id', 'name'],
  ['trial', 'trial', 'id', 'question'],
  ['combination', 'combination', 'id', 'name'],
  ['package', 'package', 'id', 'name'],
  ['engine', 'engine', 'id', 'name'],
  ['cell', 'cell', 'id', 'name'],
  ['file', 'file', 'hash', 'name'],
  ['session', 'session', 'id', 'name'],
  ['set-up', 'setUp', 'id', 'notes'],
  ['layout', 'layout', 'fingerprint', 'name'],
  ['silenced', 'silenced', 'id', 'ruleId'],
  ['prediction', 'prediction', 'id', 'basis'],
  ['compressorMap', 'compressorMap', 'id', 'name'],
  ['publication', 'publication', 'id', 'question'],
  ['enquiry', 'enquiry', 'id', 'question'],
  ['book', 'book', 'id', 'name'],
] as const;

/** What subjects of the log are called, withdrawn ones too. */
export async function readSubjectNames(rows: Rows, subjects: readonly string[]): Promise<Named> {
  const named: Named = new Map();
  for (const [kind, table, idColumn, nameColumn] of TABLES) {
    const ids = subjects.flatMap((subject) =>
      subject.startsWith(`${kind} `) ? [subject.slice(kind.length + 1)] : [],
    );
    if (ids.length === 0) continue;
    const there = isThere(kind as WithdrawnKind, `${table}.${idColumn}`);
    const { rows: found } = await sql<{ id: string; name: string; isThere: number }>`
      select ${sql.ref(idColumn)} as id, ${sql.ref(nameColumn)} as name, ${there} as isThere
      from ${sql.table(table)} where ${sql.ref(idColumn)} in ${amongIds(ids)}`.execute(rows);
    for (const row of found) {
      named.set(`${kind} ${row.id}`, { name: row.name, isThere: row.isThere === 1 });
    }
  }
  return named;
}
