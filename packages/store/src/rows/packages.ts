import type { Package } from '@pullbook/core/combination';
import type { Rows } from '../connection.ts';
import { fromJson, toJson } from '../json.ts';

export async function readPackages(rows: Rows): Promise<Package[]> {
  const found = await rows.selectFrom('package').selectAll().orderBy('sequence').execute();
  return found.map(({ id, name, covers, invented }) => ({
    id,
    name,
    covers: fromJson(covers),
    invented: invented === 1,
  }));
}

export async function insertPackage(rows: Rows, item: Package): Promise<void> {
  const { id, name, covers, invented } = item;
  await rows
    .insertInto('package')
    .values({ id, name, covers: toJson(covers), invented: Number(invented) })
    .execute();
}
