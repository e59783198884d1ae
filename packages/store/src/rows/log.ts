import type { Rows } from '../connection.ts';
import { fromJson, toJson } from '../json.ts';
import type { LogEntry } from '../model.ts';

/** The log, oldest first. */
export async function readLog(rows: Rows): Promise<LogEntry[]> {
  const found = await rows.selectFrom('log').selectAll().orderBy('id').execute();
  return found.map((row) => ({ ...row, before: fromJson(row.before), after: fromJson(row.after) }));
}

/** What was done, in the transaction that does it. */
export interface Act {
  act: string;
  subject: string;
  reason?: string;
  before?: unknown;
  after?: unknown;
}

export async function logAct(rows: Rows, { act, subject, reason = '', before, after }: Act): Promise<void> {
  const at = new Date().toISOString();
  await rows
    .insertInto('log')
    .values({ at, act, subject, reason, before: toJson(before), after: toJson(after) })
    .execute();
}

/** An entry as another book had it. */
export async function insertLogEntry(rows: Rows, entry: LogEntry): Promise<void> {
  await rows
    .insertInto('log')
    .values({ ...entry, before: toJson(entry.before), after: toJson(entry.after) })
    .execute();
}
