import type { Rows } from '../connection.ts';
import { fromJson, toJson } from '../json.ts';
import type { StoredSettings } from '../model.ts';

export async function readSettings(rows: Rows): Promise<StoredSettings> {
  const found = await rows.selectFrom('setting').selectAll().orderBy('name').execute();
  return Object.fromEntries(found.map(({ name, value }) => [name, fromJson(value)]));
}

/** Keeps the named settings; `null` forgets one. The others stay. */
export async function keepSettings(rows: Rows, change: StoredSettings): Promise<void> {
  for (const [name, value] of Object.entries(change)) {
    if (value === null) await rows.deleteFrom('setting').where('name', '=', name).execute();
    else {
      await rows
        .insertInto('setting')
        .values({ name, value: toJson(value) })
        .onConflict((conflict) => conflict.column('name').doUpdateSet({ value: toJson(value) }))
        .execute();
    }
  }
}
