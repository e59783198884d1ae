import { type Selectable, type SelectQueryBuilder, sql } from 'kysely';
import type { Rows } from '../connection.ts';
import { fromJson, toJson } from '../json.ts';
import type { FoundPulls, ListedPull, PullQuery } from '../model.ts';
import { bytesFromSamples, samplesFromBytes } from '../samples.ts';
import type { Tables } from '../tables.ts';
import { amongIds } from './among-ids.ts';
import { headFromRow } from './pulls.ts';
import { isThere } from './withdrawn.ts';

type Joined = {
  p: Tables['pull'];
  l: { [Column in keyof Tables['listed']]: Tables['listed'][Column] | null };
};

/** One page of the pulls that fit, and how many fit. A pull of which nothing is remembered yet is found by its name. */
export async function findPulls(rows: Rows, query: PullQuery): Promise<FoundPulls> {
  const fitting = narrowed(
    rows
      .selectFrom('pull as p')
      .leftJoin('listed as l', 'l.pullId', 'p.id')
      .where(isThere('pull', 'p.id')) as unknown as SelectQueryBuilder<Joined, 'p' | 'l', object>,
    query,
  );
  const { total } = await fitting
    .select(({ fn }) => fn.countAll<number>().as('total'))
    .executeTakeFirstOrThrow();
  const ids = await ordered(fitting, query.sort)
    .select(['p.id as id'])
    .offset(query.offset)
    .limit(query.limit)
    .execute();
  const { all } = await rows
    .selectFrom('pull as p')
    .where(isThere('pull', 'p.id'))
    .select(({ fn }) => fn.countAll<number>().as('all'))
    .executeTakeFirstOrThrow();
  const wanted = amongIds(ids.map(({ id }) => id));
  const heads = await rows.selectFrom('pull').selectAll().where('id', 'in', wanted).execute();
  const listed = await rows.selectFrom('listed').selectAll().where('pullId', 'in', wanted).execute();
  const headOf = new Map(heads.map((row) => [row.id, headFromRow(row)]));
  const listedOf = new Map(listed.map((row) => [row.pullId, listedFromRow(row)]));
  const pulls = ids.map(({ id }) => ({ head: headOf.get(id)!, listed: listedOf.get(id) ?? null }));
  return { pulls, total, all };
}

function narrowed<Query extends SelectQueryBuilder<Joined, 'p' | 'l', object>>(
  all: Query,
  asked: PullQuery,
): Query {
  let query = all as SelectQueryBuilder<Joined, 'p' | 'l', object>;
  for (const word of asked.words ?? []) {
    query = query.where(sql<boolean>`instr(coalesce(l.words, lower(p.name)), ${word}) > 0`);
  }
  if (asked.ids) query = query.where('p.id', 'in', amongIds(asked.ids));
  if (asked.combinationIds) query = query.where('p.combinationId', 'in', amongIds(asked.combinationIds));
  if (asked.withoutCombination) query = query.where('p.combinationId', 'is', null);
  if (asked.engineId !== undefined) {
    query = query.where(
      sql<boolean>`p.combinationId in (select id from combination where engineId = ${asked.engineId})`,
    );
  }
  if (asked.cell !== undefined) query = query.where('p.cell', '=', asked.cell);
  if (asked.fromDay !== undefined)
    query = query.where(sql<boolean>`substr(p.recordedAt, 1, 10) >= ${asked.fromDay}`);
  if (asked.toDay !== undefined)
    query = query.where(sql<boolean>`substr(p.recordedAt, 1, 10) <= ${asked.toDay}`);
  if (asked.powerFrom !== undefined) query = query.where('l.peakPower', '>=', asked.powerFrom);
  if (asked.powerTo !== undefined) query = query.where('l.peakPower', '<=', asked.powerTo);
  if (asked.boosted === 'unknown') query = query.where('l.boosted', 'is', null);
  else if (asked.boosted !== undefined) query = query.where('l.boosted', '=', Number(asked.boosted));
  if (asked.outcome !== undefined) query = query.where('p.outcome', '=', asked.outcome);
  if (asked.inTrial !== undefined) {
    const standsInOne = sql<boolean>`exists (select 1 from trialPull t where t.pullId = p.id and ${isThere('trial', 't.trialId')})`;
    query = query.where(asked.inTrial ? standsInOne : sql<boolean>`not ${standsInOne}`);
  }
  if (asked.invented !== undefined) query = query.where('p.invented', '=', Number(asked.invented));
  return query as Query;
}

/** The newest is the one that came last into the book: a clock may have been set back. */
function ordered<Query extends SelectQueryBuilder<Joined, 'p' | 'l', object>>(
  query: Query,
  sort: PullQuery['sort'],
): Query {
  const sorted =
    sort === 'power'
      ? query.orderBy(sql`l.peakPower desc nulls last`)
      : sort === 'name'
        ? query.orderBy(sql`p.name collate nocase`)
        : query;
  return sorted.orderBy('p.sequence', 'desc') as Query;
}

/** Pulls of which nothing is remembered under this key, the one added last first. */
export async function readUnlisted(rows: Rows, key: string, most: number): Promise<string[]> {
  const found = await rows
    .selectFrom('pull as p')
    .select('p.id')
    .where(isThere('pull', 'p.id'))
    .where(sql<boolean>`not exists (select 1 from listed where listed.pullId = p.id and listed.key = ${key})`)
    .orderBy('p.sequence', 'desc')
    .limit(most)
    .execute();
  return found.map(({ id }) => id);
}

export async function keepListed(rows: Rows, listed: readonly ListedPull[]): Promise<void> {
  for (const one of listed) {
    const values = {
      key: one.key,
      words: one.words,
      figures: toJson(one.figures),
      peakPower: one.peakPower,
      peakTorque: one.peakTorque,
      boosted: one.boosted === null ? null : Number(one.boosted),
      digest: one.digest === null ? null : bytesFromSamples(one.digest.values),
      runAs: one.digest?.runAs ?? null,
    };
    await rows
      .insertInto('listed')
      .values({ pullId: one.pullId, ...values })
      .onConflict((conflict) => conflict.column('pullId').doUpdateSet(values))
      .execute();
  }
}

function listedFromRow({
  digest,
  runAs,
  boosted,
  figures,
  ...row
}: Selectable<Tables['listed']>): ListedPull {
  return {
    ...row,
    figures: fromJson(figures),
    boosted: boosted === null ? null : boosted === 1,
    digest: digest === null || runAs === null ? null : { values: samplesFromBytes(digest), runAs },
  };
}
