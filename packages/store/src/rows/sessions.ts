import type { Session } from '@pullbook/core/pull';
import type { Rows } from '../connection.ts';

export function readSessions(rows: Rows): Promise<Session[]> {
  return rows
    .selectFrom('session')
    .select(['id', 'name', 'cell', 'day', 'notes'])
    .orderBy('sequence')
    .execute();
}

export async function insertSession(rows: Rows, session: Session): Promise<void> {
  const { id, name, cell, day, notes } = session;
  await rows.insertInto('session').values({ id, name, cell, day, notes }).execute();
}
