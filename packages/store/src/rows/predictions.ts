import type { Prediction } from '@pullbook/core/shop';
import type { Rows } from '../connection.ts';
import { amongIds } from './among-ids.ts';

/** All predictions, or those of these trials, in the order in which they came; withdrawn ones too. */
export async function readPredictions(rows: Rows, trialIds?: readonly string[]): Promise<Prediction[]> {
  let query = rows.selectFrom('prediction').selectAll().orderBy('sequence');
  if (trialIds !== undefined) query = query.where('trialId', 'in', amongIds(trialIds));
  const found = await query.execute();
  return found.map(({ sequence: _, ...prediction }) => prediction);
}

export async function insertPrediction(rows: Rows, prediction: Prediction): Promise<void> {
  const { id, trialId, key, what, value, low, high, basis, at } = prediction;
  await rows
    .insertInto('prediction')
    .values({ id, trialId, key, what, value, low, high, basis, at })
    .execute();
}
