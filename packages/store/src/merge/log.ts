import { createHash } from 'node:crypto';
import type BetterSqlite3 from 'better-sqlite3';
import type { Selectable } from 'kysely';
import type { Tables } from '../tables.ts';

/** A line of the log as it stands in the table. */
export type LogRow = Selectable<Tables['log']>;

/** A name that was taken in this book by another entry: copies of one book go on counting from the same number. */
const SECOND_NAME = /~[0-9a-f]{8}$/;
const firstName = (uid: string): string => uid.replace(SECOND_NAME, '');

/** The same for the same entry in any book. */
export function entryDigest({ uid, at, act, subject, reason, before, after }: LogRow): string {
  return digest([firstName(uid), at, act, subject, reason, before, after]);
}

export const digest = (value: unknown): string =>
  createHash('sha256').update(JSON.stringify(value)).digest('hex');

export function logRows(database: BetterSqlite3.Database, schema: 'main' | 'other'): LogRow[] {
  return database.prepare(`select * from ${schema}.log order by id`).all() as LogRow[];
}

/** The act of an entry that keeps what another book said of a thing. */
export const KEPT = 'kept from a merge';

/** Who knows more of a subject, by the entries of both logs about it. */
export type Later = 'same' | 'ours' | 'theirs' | 'both';

export function laterBySubject(
  ours: readonly LogRow[],
  theirs: readonly LogRow[],
): (subject: string) => Later {
  const own = digestsBySubject(ours);
  const others = digestsBySubject(theirs);
  const empty = new Set<string>();
  return (subject) => {
    const mine = own.get(subject) ?? empty;
    const his = others.get(subject) ?? empty;
    const onlyOurs = [...mine].some((one) => !his.has(one));
    const onlyTheirs = [...his].some((one) => !mine.has(one));
    if (onlyOurs) return onlyTheirs ? 'both' : 'ours';
    return onlyTheirs ? 'theirs' : 'same';
  };
}

function digestsBySubject(rows: readonly LogRow[]): Map<string, Set<string>> {
  const bySubject = new Map<string, Set<string>>();
  for (const row of rows) {
    // Said by a merge of what it found, not by anybody of the thing.
    if (row.act === KEPT) continue;
    const known = bySubject.get(row.subject) ?? new Set();
    bySubject.set(row.subject, known.add(entryDigest(row)));
  }
  return bySubject;
}

/** Writes the entries that ours lacks after ours, in their order; gives how many. */
export function bringLogIn(
  database: BetterSqlite3.Database,
  ours: readonly LogRow[],
  theirs: readonly LogRow[],
): number {
  const known = new Map(ours.map((row) => [entryDigest(row), row.uid]));
  const taken = new Set(ours.map(({ uid }) => uid));
  const nameHere = new Map<string, string>();
  const coming: LogRow[] = [];
  for (const row of theirs) {
    const key = entryDigest(row);
    const here = known.get(key);
    const uid = here ?? (taken.has(row.uid) ? `${firstName(row.uid)}~${key.slice(0, 8)}` : row.uid);
    nameHere.set(row.uid, uid);
    taken.add(uid);
    if (here === undefined) coming.push({ ...row, uid });
  }
  const named = (uid: string) => nameHere.get(uid) ?? uid;
  for (const row of coming) {
    const undoes = row.undoes === null ? null : named(row.undoes);
    writeEntry(database, { ...row, undoes, together: named(row.together) });
  }
  return coming.length;
}

/** Writes an entry with the next number. */
export function writeEntry(database: BetterSqlite3.Database, row: Omit<LogRow, 'id'>): void {
  const { uid, undoes, together, at, act, subject, reason, before, after } = row;
  database
    .prepare(
      `insert into main.log (id, uid, undoes, together, at, act, subject, reason, before, after)
        values ((select coalesce(max(id), 0) + 1 from main.log), ?, ?, ?, ?, ?, ?, ?, ?, ?)`,
    )
    .run(uid, undoes, together, at, act, subject, reason, before, after);
}
