import type { PredictedCurve, Prediction } from '@pullbook/core/shop';
import type { Rows } from '../connection.ts';
import { fromJson, toJson } from '../json.ts';
import { amongIds } from './among-ids.ts';

/** All predictions, or those of these trials, in the order in which they came; withdrawn ones too. */
export async function readPredictions(rows: Rows, trialIds?: readonly string[]): Promise<Prediction[]> {
  let query = rows.selectFrom('prediction').selectAll().orderBy('sequence');
  if (trialIds !== undefined) query = query.where('trialId', 'in', amongIds(trialIds));
  const found = await query.execute();
  return found.map(({ sequence: _, curve, madeBy, ...plain }) => ({
    ...plain,
    ...given('curve', fromJson<Prediction['curve']>(curve)),
    ...given('madeBy', fromJson<Prediction['madeBy']>(madeBy)),
  }));
}

export async function insertPrediction(rows: Rows, prediction: Prediction): Promise<void> {
  const { curve, madeBy, ...plain } = prediction;
  if (curve) assertNumbers(curve);
  await rows
    .insertInto('prediction')
    .values({ ...plain, curve: toJson(curve), madeBy: toJson(madeBy) })
    .execute();
}

/** A field that is there; a person's word has neither curve nor program. */
const given = <Name extends string, T>(name: Name, value: T | null | undefined) =>
  (value == null ? {} : { [name]: value }) as { [key in Name]?: T };

/** JSON would keep what is no number as nothing, and a prediction can never be mended. */
function assertNumbers({ engineSpeedRpm, power, boost, air }: PredictedCurve): void {
  const figures = [power, ...(boost ? [boost] : [])].flatMap(({ value, low, high }) => [value, low, high]);
  if (figures.some(({ length }) => length !== engineSpeedRpm.length))
    throw new Error('a predicted curve has figures of another length than its engine speeds');
  const numbers = [...engineSpeedRpm, ...figures.flat(), air.pressure, air.temperature];
  if (!numbers.every(Number.isFinite)) throw new Error('a predicted curve has a figure that is no number');
}
