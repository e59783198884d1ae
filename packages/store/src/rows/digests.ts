import { sql } from 'kysely';
import type { Rows } from '../connection.ts';
import { fromJson } from '../json.ts';
import type { DigestRow } from '../model.ts';
import { isThere, onlyThere } from './withdrawn.ts';

/**
 * What the lists remember of every pull under this key for the shop's figures, with what was written down about it. Put
 * together here from plain queries: joined by SQLite row by row it takes three times as long.
 */
export async function readDigests(rows: Rows, key: string): Promise<DigestRow[]> {
  const pulls = await rows
    .selectFrom('pull')
    .select(['id', 'combinationId', 'setUpId', 'sessionId', 'orderInSession', 'recordedAt', 'cell'])
    .select(['tune', 'outcome', 'origin', 'invented'])
    .orderBy('sequence')
    .execute();
  const combinations = await rows.selectFrom('combination').select(['id', 'engineId']).execute();
  const engineOf = new Map(combinations.map(({ id, engineId }) => [id, engineId]));
  const notCounted = await rows
    .selectFrom('trialPull')
    .select('pullId')
    .where('role', '<>', 'counted')
    .where(isThere('trial', 'trialPull.trialId'))
    .execute();
  const setAside = new Set(notCounted.map(({ pullId }) => pullId));
  const listed = await rows
    .selectFrom('listed')
    .select('pullId')
    .select(sql<string | null>`json_extract(figures, '$.digest')`.as('digest'))
    .where('key', '=', key)
    .execute();
  // One text for all: ten thousand small ones take twice as long to read.
  const digests = fromJson<unknown[]>(`[${listed.map(({ digest }) => digest ?? 'null').join(',')}]`);
  const digestOf = new Map(listed.map(({ pullId }, at) => [pullId, digests[at]]));
  const there = await onlyThere(rows, 'pull', pulls, ({ id }) => id);
  return there.map(({ id, invented, ...pull }) => ({
    ...pull,
    pullId: id,
    engineId: engineOf.get(pull.combinationId ?? '') ?? null,
    invented: invented === 1,
    isListed: digestOf.has(id),
    digest: digestOf.get(id) ?? null,
    isSetAside: setAside.has(id),
  }));
}
