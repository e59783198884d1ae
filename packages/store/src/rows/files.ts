import type { OriginalFile } from '@pullbook/core/pull';
import type { Rows } from '../connection.ts';
import { fromJson, toJson } from '../json.ts';

/** All files, or the one of that hash, in the order in which they came. */
export async function readFiles(rows: Rows, hash?: string): Promise<OriginalFile[]> {
  let query = rows.selectFrom('file').selectAll().orderBy('sequence');
  if (hash !== undefined) query = query.where('hash', '=', hash);
  const found = await query.execute();
  return found.map((row) => ({
    hash: row.hash,
    name: row.name,
    byteLength: row.byteLength,
    addedAt: row.addedAt,
    mapping: fromJson(row.mapping),
  }));
}

/** Keeps how the columns of a file are understood from now on; its bytes stay. */
export async function understandFileAs(rows: Rows, hash: string, mapping: unknown): Promise<void> {
  await rows
    .updateTable('file')
    .set({ mapping: toJson(mapping) })
    .where('hash', '=', hash)
    .execute();
}

export async function insertFile(rows: Rows, file: OriginalFile): Promise<void> {
  const { hash, name, byteLength, addedAt, mapping } = file;
  await rows
    .insertInto('file')
    .values({ hash, name, byteLength, addedAt, mapping: toJson(mapping) })
    .execute();
}
