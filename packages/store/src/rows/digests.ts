import type BetterSqlite3 from 'better-sqlite3';
import type { Rows } from '../connection.ts';
import type { DigestRow } from '../model.ts';
import { samplesFromBytes } from '../samples.ts';
import { isThere, onlyThere } from './withdrawn.ts';

type PullColumns = [
  pullId: string,
  combinationId: string | null,
  setUpId: string | null,
  sessionId: string | null,
  orderInSession: number | null,
  recordedAt: string | null,
  cell: string | null,
  outcome: DigestRow['outcome'],
  origin: DigestRow['origin'],
  invented: number,
];
type ListedColumns = [pullId: string, runAs: string | null, digest: Uint8Array | null];

const PULLS = `select id, combinationId, setUpId, sessionId, orderInSession, recordedAt, cell, outcome, origin, invented
  from pull order by sequence`;
const LISTED = 'select pullId, runAs, digest from listed where key = ?';

/**
 * What the lists remember of every pull under this key for the shop's figures, with what was written down about it. The two
 * long tables are read by the driver itself, in rows without names: ten thousand pulls in a third of the time.
 */
export async function readDigests(
  rows: Rows,
  database: BetterSqlite3.Database,
  key: string,
): Promise<DigestRow[]> {
  const combinations = await rows.selectFrom('combination').select(['id', 'engineId']).execute();
  const engineOf = new Map(combinations.map(({ id, engineId }) => [id, engineId]));
  const notCounted = await rows
    .selectFrom('trialPull')
    .select('pullId')
    .where('role', '<>', 'counted')
    .where(isThere('trial', 'trialPull.trialId'))
    .execute();
  const setAside = new Set(notCounted.map(({ pullId }) => pullId));
  const pulls = database.prepare(PULLS).raw().all() as PullColumns[];
  const listed = database.prepare(LISTED).raw().all(key) as ListedColumns[];
  const listedOf = new Map(listed.map((row) => [row[0], row]));
  const there = await onlyThere(rows, 'pull', pulls, ([pullId]) => pullId);
  return there.map(
    ([
      pullId,
      combinationId,
      setUpId,
      sessionId,
      orderInSession,
      recordedAt,
      cell,
      outcome,
      origin,
      invented,
    ]) => ({
      pullId,
      combinationId,
      engineId: engineOf.get(combinationId ?? '') ?? null,
      setUpId,
      sessionId,
      orderInSession,
      recordedAt,
      cell,
      outcome,
      origin,
      invented: invented === 1,
      isListed: listedOf.has(pullId),
      digest: digestIn(listedOf.get(pullId)),
      isSetAside: setAside.has(pullId),
    }),
  );
}

function digestIn(row: ListedColumns | undefined): DigestRow['digest'] {
  if (row === undefined) return null;
  const [, runAs, digest] = row;
  return digest === null || runAs === null ? null : { values: samplesFromBytes(digest), runAs };
}

/** Beginnings of subjects that no digest and none of its groups rests on. */
const BESIDE = [
  'settings',
  'silenced ',
  'prediction ',
  'publication ',
  'enquiry ',
  'layout ',
  'cell ',
  'package ',
  'set-up ',
  'session ',
];

/** The last entry of the log that can have changed a digest or what it is grouped by. */
export async function readDigestsAsOf(rows: Rows): Promise<number> {
  const found = await rows
    .selectFrom('log')
    .select('id')
    .where((all) => all.and(BESIDE.map((beginning) => all('subject', 'not like', `${beginning}%`))))
    .orderBy('id', 'desc')
    .limit(1)
    .executeTakeFirst();
  return found?.id ?? 0;
}
