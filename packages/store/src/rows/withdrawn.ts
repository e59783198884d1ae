import { sql } from 'kysely';
import type { Rows } from '../connection.ts';
import type { Withdrawn, WithdrawnKind } from '../model.ts';

/** Condition of a query: the thing of that column was not withdrawn. */
export const isThere = (kind: WithdrawnKind, column: string) =>
  sql<boolean>`not exists (select 1 from withdrawn where withdrawn.kind = ${kind} and withdrawn.id = ${sql.ref(column)})`;

/** The things without those that were withdrawn. */
export async function onlyThere<T>(
  rows: Rows,
  kind: WithdrawnKind,
  things: readonly T[],
  idOf: (thing: T) => string,
): Promise<T[]> {
  const found = await rows.selectFrom('withdrawn').select('id').where('kind', '=', kind).execute();
  const gone = new Set(found.map(({ id }) => id));
  return things.filter((thing) => !gone.has(idOf(thing)));
}

export async function isWithdrawn(rows: Rows, kind: WithdrawnKind, id: string): Promise<boolean> {
  const found = await rows
    .selectFrom('withdrawn')
    .select('id')
    .where('kind', '=', kind)
    .where('id', '=', id)
    .executeTakeFirst();
  return found !== undefined;
}

export async function readWithdrawn(rows: Rows): Promise<Withdrawn[]> {
  const found = await rows.selectFrom('withdrawn').selectAll().orderBy('kind').orderBy('id').execute();
  return found.map(({ kind, id, at }) => ({ kind: kind as WithdrawnKind, id, at }));
}

export async function insertWithdrawn(rows: Rows, { kind, id, at }: Withdrawn): Promise<void> {
  await rows
    .insertInto('withdrawn')
    .values({ kind, id, at })
    .onConflict((conflict) => conflict.columns(['kind', 'id']).doNothing())
    .execute();
}

export async function deleteWithdrawn(rows: Rows, kind: WithdrawnKind, id: string): Promise<void> {
  await rows.deleteFrom('withdrawn').where('kind', '=', kind).where('id', '=', id).execute();
}
