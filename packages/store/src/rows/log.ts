import type { Selectable } from 'kysely';
import type { Rows } from '../connection.ts';
import { fromJson, toJson } from '../json.ts';
import type { LogEntry, LogPage, LogQuery } from '../model.ts';
import type { Tables } from '../tables.ts';

/** The log, oldest first. */
export async function readLog(rows: Rows): Promise<LogEntry[]> {
  const found = await rows.selectFrom('log').selectAll().orderBy('id').execute();
  return found.map(entryFromRow);
}

/** A page of the log, newest first: by number, never by the clock. */
export async function readLogPage(rows: Rows, { subject, before, limit }: LogQuery): Promise<LogPage> {
  let query = rows
    .selectFrom('log')
    .selectAll()
    .orderBy('id', 'desc')
    .limit(limit + 1);
  if (subject !== undefined) query = query.where('subject', '=', subject);
  if (before !== undefined) query = query.where('id', '<', before);
  const found = (await query.execute()).map(entryFromRow);
  const entries = found.slice(0, limit);
  const last = entries.at(-1);
  if (last && found.length > limit) {
    const rest = (await readTogether(rows, last.uid)).filter(
      (one) => one.id < last.id && (subject === undefined || one.subject === subject),
    );
    entries.push(...rest.reverse());
  }
  const undone = new Set<string>();
  for (const { uid } of entries) if (await isUndone(rows, uid)) undone.add(uid);
  return { entries, undone, next: found.length > limit ? entries.at(-1)!.id : null };
}

/** Number of the last entry; 0: the log is empty. */
export async function readLastId(rows: Rows): Promise<number> {
  const last = await rows
    .selectFrom('log')
    .select(({ fn }) => fn.max('id').as('id'))
    .executeTakeFirst();
  return last?.id ?? 0;
}

/** Whether an entry was undone, and its undoing was not undone itself. */
export async function isUndone(rows: Rows, uid: string): Promise<boolean> {
  const undoing = await rows.selectFrom('log').select('uid').where('undoes', '=', uid).execute();
  for (const one of undoing) if (!(await isUndone(rows, one.uid))) return true;
  return false;
}

/** Entries about a subject after the one of that `uid`, oldest first; all of them where it is not known. */
export async function readLogSince(rows: Rows, subject: string, uid: string): Promise<LogEntry[]> {
  const seen = await rows.selectFrom('log').select('id').where('uid', '=', uid).executeTakeFirst();
  const found = await rows
    .selectFrom('log')
    .selectAll()
    .where('subject', '=', subject)
    .where('id', '>', seen?.id ?? 0)
    .orderBy('id')
    .execute();
  return found.map(entryFromRow);
}

/** `uid` of the last entry about a subject; '' where there is none. */
export async function readStamp(rows: Rows, subject: string): Promise<string> {
  const last = await rows
    .selectFrom('log')
    .select('uid')
    .where('subject', '=', subject)
    .orderBy('id', 'desc')
    .limit(1)
    .executeTakeFirst();
  return last?.uid ?? '';
}

/** All that was done in one step with the entry of that `uid`, oldest first; empty where there is none. */
export async function readTogether(rows: Rows, uid: string): Promise<LogEntry[]> {
  const one = await rows.selectFrom('log').select('together').where('uid', '=', uid).executeTakeFirst();
  if (!one) return [];
  const found = await rows
    .selectFrom('log')
    .selectAll()
    .where('together', '=', one.together)
    .orderBy('id')
    .execute();
  return found.map(entryFromRow);
}

/** What was done, in the transaction that does it. */
export interface Act {
  act: string;
  subject: string;
  reason?: string;
  before?: unknown;
  after?: unknown;
  /** `uid` of the entry that this act undoes. */
  undoes?: string | null;
  /** ISO 8601; now where it is not given. */
  at?: string;
  /** `uid` of the first entry of the same step; its own where it is not given. */
  together?: string;
}

/** Writes an act into the log. Its number is one more than the last, whatever the clock says. */
export async function logAct(rows: Rows, act: Act): Promise<LogEntry> {
  const { id: bookId } = await rows.selectFrom('book').select('id').executeTakeFirstOrThrow();
  const id = (await readLastId(rows)) + 1;
  const uid = `${bookId}/${id}`;
  const entry: LogEntry = {
    id,
    uid,
    undoes: act.undoes ?? null,
    together: act.together ?? uid,
    at: act.at ?? new Date().toISOString(),
    act: act.act,
    subject: act.subject,
    reason: act.reason ?? '',
    before: act.before ?? null,
    after: act.after ?? null,
  };
  await insertLogEntry(rows, entry);
  return entry;
}

/** An entry as another book had it. */
export async function insertLogEntry(rows: Rows, entry: LogEntry): Promise<void> {
  await rows
    .insertInto('log')
    .values({ ...entry, before: toJson(entry.before), after: toJson(entry.after) })
    .execute();
}

function entryFromRow(row: Selectable<Tables['log']>): LogEntry {
  return { ...row, before: fromJson(row.before), after: fromJson(row.after) };
}
