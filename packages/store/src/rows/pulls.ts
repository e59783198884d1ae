import type { Pull } from '@pullbook/core/pull';
import { type Insertable, type Selectable, sql } from 'kysely';
import { channelsHash } from '../channels-hash.ts';
import type { Connection, Rows } from '../connection.ts';
import { fromJson, toJson } from '../json.ts';
import { BookTrouble } from '../model.ts';
import type { PullTable } from '../tables.ts';
import { damagedMessage } from '../trouble.ts';
import { insertChannels, readChannels } from './channels.ts';

/** A pull without its channels. */
export type PullHead = Omit<Pull, 'channels'>;

/** Heads in the order in which the pulls came. */
export async function readPullHeads(rows: Rows): Promise<PullHead[]> {
  const found = await rows.selectFrom('pull').selectAll().orderBy('sequence').execute();
  return found.map(headFromRow);
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
  const wanted = sql<string>`(select value from json_each(${toJson(ids)}))`;
  const found = await rows.selectFrom('pull').selectAll().where('id', 'in', wanted).execute();
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

export async function insertPull(rows: Rows, pull: Pull): Promise<void> {
  assertWhole(pull);
  await insertChannels(rows, pull.id, pull.channels);
  await rows.insertInto('pull').values(rowFromPull(pull)).execute();
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

function rowFromPull({ channels, ...head }: Pull): Insertable<PullTable> {
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
    origin: head.origin,
    fileHash: head.fileHash,
    invented: Number(head.invented),
  };
}

function headFromRow(row: Selectable<PullTable>): PullHead {
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
    invented: row.invented === 1,
  };
}
