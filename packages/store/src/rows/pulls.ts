import type { Pull } from '@pullbook/core/pull';
import type { Insertable, Selectable } from 'kysely';
import { channelsHash } from '../channels-hash.ts';
import type { Connection, Rows } from '../connection.ts';
import { fromJson, toJson } from '../json.ts';
import { BookTrouble, type PullHead } from '../model.ts';
import type { PullTable } from '../tables.ts';
import { damagedMessage } from '../trouble.ts';
import { amongIds } from './among-ids.ts';
import { insertChannels, readChannels } from './channels.ts';
import { isThere } from './withdrawn.ts';

/** Heads in the order in which the pulls came, withdrawn ones too. */
export async function readPullHeads(rows: Rows): Promise<PullHead[]> {
  const found = await rows.selectFrom('pull').selectAll().orderBy('sequence').execute();
  return found.map(headFromRow);
}

/** Heads of those ids in the order asked; what is not in the book or was withdrawn is left out. */
export async function readHeadsOf(rows: Rows, ids: readonly string[]): Promise<PullHead[]> {
  const found = await rows
    .selectFrom('pull')
    .selectAll()
    .where('id', 'in', amongIds(ids))
    .where(isThere('pull', 'pull.id'))
    .execute();
  const byId = new Map(found.map((row) => [row.id, headFromRow(row)]));
  return ids.flatMap((id) => byId.get(id) ?? []);
}

/**
 * The pulls of those ids, whole, in the order asked; ids that are not in the book are left out.
 * Throws `BookTrouble` where the channels are not those that were stored.
 */
export async function readPulls(
  rows: Rows,
  ids: readonly string[],
  folder: Connection['folder'],
): Promise<Pull[]> {
  const found = await rows.selectFrom('pull').selectAll().where('id', 'in', amongIds(ids)).execute();
  const byId = new Map(found.map((row) => [row.id, row]));
  const pulls: Pull[] = [];
  for (const row of ids.flatMap((id) => byId.get(id) ?? [])) {
    const channels = await readChannels(rows, row.id);
    if (channelsHash(channels) !== row.channelsHash) {
      const detail = `the channels of the pull "${row.name}", ${row.id}, are not those that were stored`;
      throw new BookTrouble('damaged', damagedMessage(folder, detail));
    }
    pulls.push({ ...headFromRow(row), channels });
  }
  return pulls;
}

/** The pull that was added last, without its channels. */
export async function readNewestPull(rows: Rows): Promise<PullHead | null> {
  const found = await rows
    .selectFrom('pull')
    .selectAll()
    .where(isThere('pull', 'pull.id'))
    .orderBy('sequence', 'desc')
    .limit(1)
    .executeTakeFirst();
  return found ? headFromRow(found) : null;
}

export async function insertPull(rows: Rows, pull: Pull): Promise<void> {
  assertWhole(pull);
  await insertChannels(rows, pull.id, pull.channels);
  await rows.insertInto('pull').values(rowFromPull(pull)).execute();
}

/** Place of a pull that joins a session last; `null` without a session. */
export async function nextInSession(rows: Rows, sessionId: string | null): Promise<number | null> {
  if (sessionId === null) return null;
  const last = await rows
    .selectFrom('pull')
    .select(({ fn }) => fn.max('orderInSession').as('order'))
    .where('sessionId', '=', sessionId)
    .executeTakeFirst();
  return (last?.order ?? 0) + 1;
}

/** Writes what may be amended; the triggers refuse the rest. */
export async function updatePullHead(rows: Rows, head: PullHead): Promise<void> {
  const { id, form, summary, origin, fileHash, invented, ...amendable } = rowFromHead(head);
  await rows.updateTable('pull').set(amendable).where('id', '=', id).execute();
}

export async function readPullIdsOfFile(rows: Rows, hash: string): Promise<string[]> {
  const found = await rows
    .selectFrom('pull')
    .select('id')
    .where('fileHash', '=', hash)
    .where(isThere('pull', 'pull.id'))
    .orderBy('sequence')
    .execute();
  return found.map(({ id }) => id);
}

function assertWhole({ id, form, channels }: Pull): void {
  const lengths = new Set(channels.map(({ values }) => values.length));
  if (form === 'curve' && channels.length === 0) throw new Error(`pull ${id}: a curve without channels`);
  if (form === 'summary' && channels.length > 0) throw new Error(`pull ${id}: a summary with channels`);
  if (lengths.size > 1)
    throw new Error(`pull ${id}: channels of different lengths, ${[...lengths].join(', ')}`);
}

export function rowFromPull({ channels, ...head }: Pull): Insertable<PullTable> {
  return { ...rowFromHead(head), channelsHash: channelsHash(channels) };
}

function rowFromHead(head: PullHead): Omit<Insertable<PullTable>, 'channelsHash'> {
  return {
    id: head.id,
    name: head.name,
    combinationId: head.combinationId,
    setUpId: head.setUpId,
    sessionId: head.sessionId,
    orderInSession: head.orderInSession,
    recordedAt: head.recordedAt,
    cell: head.cell,
    operator: head.operator,
    form: head.form,
    summary: toJson(head.summary),
    weather: toJson(head.weather),
    carried: toJson(head.carried),
    sweep: toJson(head.sweep),
    tune: toJson(head.tune),
    places: toJson(head.places),
    notes: toJson(head.notes),
    events: toJson(head.events),
    outcome: head.outcome,
    treatment: toJson(head.treatment),
    audience: toJson(head.audience),
    origin: head.origin,
    fileHash: head.fileHash,
    invented: Number(head.invented),
  };
}

export function headFromRow(row: Selectable<PullTable>): PullHead {
  const { sequence, channelsHash, ...plain } = row;
  return {
    ...plain,
    summary: fromJson(row.summary),
    weather: fromJson(row.weather),
    carried: fromJson(row.carried),
    sweep: fromJson(row.sweep),
    tune: fromJson(row.tune),
    places: fromJson(row.places),
    notes: fromJson(row.notes),
    events: fromJson(row.events),
    treatment: fromJson(row.treatment),
    audience: fromJson(row.audience),
    invented: row.invented === 1,
  };
}
