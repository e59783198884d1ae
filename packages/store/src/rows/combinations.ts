import type { Combination, CombinationSheet } from '@pullbook/core/combination';
import type { Rows } from '../connection.ts';
import { groupBy } from '../group-by.ts';
import { fromJson, toJson } from '../json.ts';

/** All combinations, or the one of that id, in the order in which they came; withdrawn ones too. */
export async function readCombinations(rows: Rows, id?: string): Promise<Combination[]> {
  let query = rows.selectFrom('combination').selectAll().orderBy('sequence');
  if (id !== undefined) query = query.where('id', '=', id);
  const found = await query.execute();
  let fittedQuery = rows.selectFrom('combinationPackage').selectAll().orderBy('place');
  if (id !== undefined) fittedQuery = fittedQuery.where('combinationId', '=', id);
  const fitted = await fittedQuery.execute();
  const packageIds = groupBy(fitted, ({ combinationId }) => combinationId);
  return found.map((row) => ({
    id: row.id,
    engineId: row.engineId,
    name: row.name,
    sheet: fromJson(row.sheet),
    revision: row.revision,
    madeFromId: row.madeFromId,
    packageIds: (packageIds.get(row.id) ?? []).map(({ packageId }) => packageId),
    createdAt: row.createdAt,
    invented: row.invented === 1,
  }));
}

export async function insertCombination(rows: Rows, combination: Combination): Promise<void> {
  const { packageIds, sheet, invented, ...plain } = combination;
  await rows
    .insertInto('combination')
    .values({
      id: plain.id,
      engineId: plain.engineId,
      name: plain.name,
      sheet: toJson(sheet),
      revision: plain.revision,
      madeFromId: plain.madeFromId,
      createdAt: plain.createdAt,
      invented: Number(invented),
    })
    .execute();
  if (packageIds.length === 0) return;
  const fitted = packageIds.map((packageId, place) => ({ combinationId: plain.id, place, packageId }));
  await rows.insertInto('combinationPackage').values(fitted).execute();
}

/** Puts the better known sheet in the place of the old one; the name follows when the sheet's did. */
export async function reviseCombination(
  rows: Rows,
  before: Combination,
  sheet: CombinationSheet,
): Promise<Combination> {
  const renamed = sheet.name !== before.sheet.name;
  const after = { ...before, sheet, name: renamed ? sheet.name : before.name, revision: before.revision + 1 };
  await rows
    .updateTable('combination')
    .set({ sheet: toJson(sheet), name: after.name, revision: after.revision })
    .where('id', '=', before.id)
    .execute();
  return after;
}
