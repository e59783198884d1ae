import type { SetUp } from '@pullbook/core/pull';
import type { Rows } from '../connection.ts';

export function readSetUps(rows: Rows): Promise<SetUp[]> {
  return rows
    .selectFrom('setUp')
    .select(['id', 'combinationId', 'fittedAt', 'notes'])
    .orderBy('sequence')
    .execute();
}

export async function insertSetUp(rows: Rows, setUp: SetUp): Promise<void> {
  const { id, combinationId, fittedAt, notes } = setUp;
  await rows.insertInto('setUp').values({ id, combinationId, fittedAt, notes }).execute();
}
