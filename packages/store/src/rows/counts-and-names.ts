import { sql } from 'kysely';
import type { Rows } from '../connection.ts';
import type { BookCounts, PullHead } from '../model.ts';
import { amongIds } from './among-ids.ts';
import { headFromRow } from './pulls.ts';
import { isThere } from './withdrawn.ts';

/** How much is in the book; what was withdrawn is not counted. */
export async function readCounts(rows: Rows): Promise<BookCounts> {
  const count = async (kind: 'engine' | 'combination' | 'pull' | 'trial' | 'enquiry') => {
    const found = await rows
      .selectFrom(kind)
      .select(({ fn }) => fn.countAll<number>().as('count'))
      .where(isThere(kind, `${kind}.id`))
      .executeTakeFirstOrThrow();
    return found.count;
  };
  const files = await rows
    .selectFrom('file')
    .select(({ fn }) => fn.countAll<number>().as('count'))
    .where(isThere('file', 'file.hash'))
    .executeTakeFirstOrThrow();
  return {
    engines: await count('engine'),
    combinations: await count('combination'),
    pulls: await count('pull'),
    trials: await count('trial'),
    files: files.count,
    enquiries: await count('enquiry'),
  };
}

/** Heads of the pulls of these combinations, the one added last first. */
export async function readHeadsWith(rows: Rows, combinationIds: readonly string[]): Promise<PullHead[]> {
  const found = await rows
    .selectFrom('pull')
    .selectAll()
    .where('combinationId', 'in', amongIds(combinationIds))
    .where(isThere('pull', 'pull.id'))
    .orderBy('sequence', 'desc')
    .execute();
  return found.map(headFromRow);
}

export function readPullNames(rows: Rows): Promise<{ id: string; name: string }[]> {
  return rows
    .selectFrom('pull')
    .select(['id', 'name'])
    .where(isThere('pull', 'pull.id'))
    .orderBy('sequence', 'desc')
    .execute();
}

/** Id and question of every trial, the one added last first, with all that it can be found by in lower case. */
export async function readTrialNames(rows: Rows): Promise<{ id: string; question: string; words: string }[]> {
  const found = await rows
    .selectFrom('trial')
    .select(['id', 'question', 'remark'])
    .select(
      sql<string>`(select coalesce(group_concat(t.shortName || ' ' || c.name || ' ' || e.name, ' '), '')
        from trialCombination t join combination c on c.id = t.combinationId join engine e on e.id = c.engineId
        where t.trialId = trial.id)`.as('hardware'),
    )
    .where(isThere('trial', 'trial.id'))
    .orderBy('sequence', 'desc')
    .execute();
  return found.map(({ id, question, remark, hardware }) => ({
    id,
    question,
    words: `${question} ${remark} ${hardware}`.toLowerCase(),
  }));
}

export async function countPulls(rows: Rows): Promise<Map<string, number>> {
  const found = await rows
    .selectFrom('pull')
    .select(['combinationId', ({ fn }) => fn.countAll<number>().as('count')])
    .where('combinationId', 'is not', null)
    .where(isThere('pull', 'pull.id'))
    .groupBy('combinationId')
    .execute();
  return new Map(found.map(({ combinationId, count }) => [combinationId!, count]));
}

export async function readPullCells(rows: Rows): Promise<{ name: string; pulls: number }[]> {
  const found = await rows
    .selectFrom('pull')
    .select(['cell', ({ fn }) => fn.countAll<number>().as('pulls')])
    .where('cell', 'is not', null)
    .where(isThere('pull', 'pull.id'))
    .groupBy('cell')
    .orderBy('cell')
    .execute();
  return found.map(({ cell, pulls }) => ({ name: cell!, pulls }));
}

export async function readTrialIdsOfPulls(rows: Rows, pullIds: readonly string[]): Promise<string[]> {
  const found = await rows
    .selectFrom('trialPull')
    .select('trialId')
    .distinct()
    .where('pullId', 'in', amongIds(pullIds))
    .where(isThere('trial', 'trialPull.trialId'))
    .execute();
  return found.map(({ trialId }) => trialId);
}
