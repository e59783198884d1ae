import type { Trial, TrialCombination, TrialPull } from '@pullbook/core/trial';
import type { Rows } from '../connection.ts';
import { groupBy } from '../group-by.ts';
import { fromJson, toJson } from '../json.ts';
import { amongIds } from './among-ids.ts';

/** All trials, or those of these ids, in the order in which they came; withdrawn ones too. */
export async function readTrials(rows: Rows, ids?: readonly string[]): Promise<Trial[]> {
  let query = rows.selectFrom('trial').selectAll().orderBy('sequence');
  let combinationQuery = rows.selectFrom('trialCombination').selectAll().orderBy('place');
  let pullQuery = rows.selectFrom('trialPull').selectAll().orderBy('place');
  if (ids !== undefined) {
    query = query.where('id', 'in', amongIds(ids));
    combinationQuery = combinationQuery.where('trialId', 'in', amongIds(ids));
    pullQuery = pullQuery.where('trialId', 'in', amongIds(ids));
  }
  const found = await query.execute();
  const combinations = await combinationQuery.execute();
  const pulls = await pullQuery.execute();
  const combinationsOf = groupBy(combinations, ({ trialId }) => trialId);
  const pullsOf = groupBy(pulls, ({ trialId }) => trialId);
  return found.map((row) => ({
    id: row.id,
    question: row.question,
    kind: row.kind,
    combinations: (combinationsOf.get(row.id) ?? []).map(
      ({ key, combinationId, shortName, takenApart }): TrialCombination => ({
        key,
        combinationId,
        shortName,
        ...(takenApart === null ? {} : { takenApart: takenApart === 1 }),
      }),
    ),
    pulls: (pullsOf.get(row.id) ?? []).map(
      ({ pullId, key, role, reason }): TrialPull => ({ pullId, key, role, reason }),
    ),
    correction: row.correction,
    averagesWindowRpm: fromJson(row.averagesWindowRpm),
    remark: row.remark,
    audience: fromJson(row.audience),
    ...(row.plan === 'null' ? {} : { plan: fromJson(row.plan) as Trial['plan'] }),
    ...(row.runningOrder === 'null'
      ? {}
      : { runningOrder: fromJson(row.runningOrder) as Trial['runningOrder'] }),
    createdAt: row.createdAt,
    invented: row.invented === 1,
  }));
}

export async function insertTrial(rows: Rows, trial: Trial): Promise<void> {
  await rows
    .insertInto('trial')
    .values({ id: trial.id, ...plainColumns(trial) })
    .execute();
  await insertMembers(rows, trial);
}

/** Puts the trial as given in the place of the stored one. */
export async function replaceTrial(rows: Rows, trial: Trial): Promise<void> {
  await rows.updateTable('trial').set(plainColumns(trial)).where('id', '=', trial.id).execute();
  await rows.deleteFrom('trialCombination').where('trialId', '=', trial.id).execute();
  await rows.deleteFrom('trialPull').where('trialId', '=', trial.id).execute();
  await insertMembers(rows, trial);
}

function plainColumns(trial: Trial) {
  const { question, kind, correction, averagesWindowRpm, remark, audience, createdAt, invented } = trial;
  return {
    question,
    kind,
    correction,
    averagesWindowRpm: toJson(averagesWindowRpm),
    remark,
    audience: toJson(audience),
    plan: toJson(trial.plan),
    runningOrder: toJson(trial.runningOrder),
    createdAt,
    invented: Number(invented),
  };
}

async function insertMembers(rows: Rows, { id: trialId, combinations, pulls }: Trial): Promise<void> {
  for (const [place, { key, combinationId, shortName, takenApart }] of combinations.entries()) {
    await rows
      .insertInto('trialCombination')
      .values({
        trialId,
        place,
        key,
        combinationId,
        shortName,
        takenApart: takenApart == null ? null : Number(takenApart),
      })
      .execute();
  }
  for (const [place, { pullId, key, role, reason }] of pulls.entries()) {
    await rows.insertInto('trialPull').values({ trialId, place, pullId, key, role, reason }).execute();
  }
}
