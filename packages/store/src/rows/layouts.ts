import type { Rows } from '../connection.ts';
import { fromJson, toJson } from '../json.ts';
import type { KnownLayout } from '../model.ts';

export async function readLayouts(rows: Rows, fingerprint?: string): Promise<KnownLayout[]> {
  let query = rows.selectFrom('layout').selectAll().orderBy('sequence');
  if (fingerprint !== undefined) query = query.where('fingerprint', '=', fingerprint);
  const found = await query.execute();
  return found.map(({ fingerprint: of, name, columns, said, confirmedAt }) => ({
    fingerprint: of,
    name,
    columns: fromJson(columns),
    said: fromJson(said),
    confirmedAt,
  }));
}

/** Puts what was confirmed last in the place of what was known of that layout. */
export async function keepLayout(rows: Rows, layout: KnownLayout): Promise<void> {
  const { fingerprint, name, columns, said, confirmedAt } = layout;
  const values = { name, columns: toJson(columns), said: toJson(said), confirmedAt };
  await rows
    .insertInto('layout')
    .values({ fingerprint, ...values })
    .onConflict((conflict) => conflict.column('fingerprint').doUpdateSet(values))
    .execute();
}

export async function deleteLayout(rows: Rows, fingerprint: string): Promise<void> {
  await rows.deleteFrom('layout').where('fingerprint', '=', fingerprint).execute();
}
