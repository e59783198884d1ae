import { sql } from 'kysely';
import type { Connection, Rows } from './connection.ts';
import { patiently } from './patiently.ts';
import { asBookTrouble } from './trouble.ts';

/** Runs queries that only read; all of them see one state of the book. */
export function reading<T>(connection: Connection, body: (rows: Rows) => Promise<T>): Promise<T> {
  return inTransaction(connection, 'begin', body);
}

/**
 * Runs queries as one transaction, alone among all programs that write this book. After it returns everything is on the
 * disk; when it throws, nothing was changed.
 */
export function writing<T>(connection: Connection, body: (rows: Rows) => Promise<T>): Promise<T> {
  // `immediate` takes the lock before anything is read: a lock taken later could not be waited for.
  return inTransaction(connection, 'begin immediate', body);
}

async function inTransaction<T>(
  connection: Connection,
  begin: 'begin' | 'begin immediate',
  body: (rows: Rows) => Promise<T>,
): Promise<T> {
  const { rows, database, lockWaitMs, folder } = connection;
  try {
    // A lock is met at the beginning or not at all, so nothing is ever done twice by trying again. While it is waited for,
    // the connection is given back to the readers of this program.
    return await patiently(lockWaitMs, () =>
      rows.connection().execute(async (own) => {
        await sql.raw(begin).execute(own);
        try {
          const result = await body(own);
          await sql`commit`.execute(own);
          return result;
        } catch (failure) {
          // After some failures, a full disk among them, SQLite has rolled back on its own.
          if (database.inTransaction) await sql`rollback`.execute(own);
          throw failure;
        }
      }),
    );
  } catch (failure) {
    throw asBookTrouble(failure, folder);
  }
}
