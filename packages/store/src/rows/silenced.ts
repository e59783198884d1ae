import type { Silenced } from '@pullbook/core/rule';
import type { Rows } from '../connection.ts';
import { amongIds } from './among-ids.ts';

/** What was silenced, all of it or for these subjects, in the order in which it came. */
export async function readSilenced(rows: Rows, subjects?: readonly string[]): Promise<Silenced[]> {
  let query = rows.selectFrom('silenced').selectAll().orderBy('sequence');
  if (subjects !== undefined) query = query.where('subject', 'in', amongIds(subjects));
  const found = await query.execute();
  return found.map(({ id, ruleId, subject, reason, at }) => ({ id, ruleId, subject, reason, at }));
}

export async function readSilencedById(rows: Rows, id: string): Promise<Silenced | null> {
  const found = await rows
    .selectFrom('silenced')
    .select(['id', 'ruleId', 'subject', 'reason', 'at'])
    .where('id', '=', id)
    .executeTakeFirst();
  return found ?? null;
}

/** Puts the reason in the place of an older one. */
export async function keepSilenced(rows: Rows, { id, ruleId, subject, reason, at }: Silenced): Promise<void> {
  await rows
    .insertInto('silenced')
    .values({ id, ruleId, subject, reason, at })
    .onConflict((conflict) => conflict.column('id').doUpdateSet({ reason, at }))
    .execute();
}

export async function deleteSilenced(rows: Rows, id: string): Promise<void> {
  await rows.deleteFrom('silenced').where('id', '=', id).execute();
}
