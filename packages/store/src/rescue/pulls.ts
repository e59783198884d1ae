import { readFileSync } from 'node:fs';
import type { Channel, OriginalFile, Pull } from '@pullbook/core/pull';
import type BetterSqlite3 from 'better-sqlite3';
import { channelsHash } from '../channels-hash.ts';
import { hashOfBytes, originalPath } from '../originals.ts';
import { rowFromPull } from '../rows/pulls.ts';
import { bytesFromSamples, samplesFromBytes } from '../samples.ts';
import type { ReadAgain, RescueReport } from './model.ts';

type Told = Pick<RescueReport, 'lost' | 'madeAgain'>;

/**
 * Leaves in the staging only pulls whose channels are proved: those of the stored hash as they are; the others made again
 * from their original where reading it gives the same hash; the rest taken out and told. Channels without a pull, and
 * pulls of a file that lost both, come back in the same way, without what was written down of them.
 */
export function mendPulls(
  database: BetterSqlite3.Database,
  folder: string,
  readAgain: ReadAgain,
  told: Told,
): void {
  const again = pullsReadAgain(database, folder, readAgain);
  for (const head of heads(database)) {
    if (head.form === 'summary' || channelsHash(channelsIn(database, head.id)) === head.channelsHash)
      continue;
    const same = again(head.fileHash).find(({ channels }) => channelsHash(channels) === head.channelsHash);
    database.prepare('delete from channel where pullId = ?').run(head.id);
    if (same) {
      insertChannels(database, head.id, same.channels);
      told.madeAgain.push({ id: head.id, name: head.name, what: 'its curve, from the original file' });
    } else {
      database.prepare('delete from pull where id = ?').run(head.id);
      told.lost.push({
        kind: 'pull',
        id: head.id,
        name: head.name,
        what:
          head.fileHash === null
            ? 'its channels are damaged, and it has no original file'
            : 'its channels are damaged, and its original file does not give them again',
      });
    }
  }
  bringBackHeadless(database, again, told);
}

/** Channels whose pull is lost, then pulls of which nothing is left but the original file. */
function bringBackHeadless(
  database: BetterSqlite3.Database,
  again: (hash: string | null) => Pull[],
  told: Told,
): void {
  const headless = database
    .prepare('select distinct pullId from channel where pullId not in (select id from pull)')
    .pluck()
    .all() as string[];
  const idByHash = new Map(headless.map((id) => [channelsHash(channelsIn(database, id)), id]));
  const removeChannels = database.prepare('delete from channel where pullId = ?');
  for (const id of headless) removeChannels.run(id);
  const kept = new Set<string>();
  const files = database.prepare('select hash from file order by sequence').pluck().all() as string[];
  for (const fileHash of files) {
    const known = new Set(
      heads(database).flatMap((head) => (head.fileHash === fileHash ? [head.channelsHash] : [])),
    );
    const drafts = again(fileHash);
    if (known.size >= drafts.length) continue;
    for (const draft of drafts) {
      const hash = channelsHash(draft.channels);
      if (known.has(hash)) continue;
      const id = idByHash.get(hash) ?? draft.id;
      kept.add(id);
      insertChannels(database, id, draft.channels);
      insertHead(database, { ...draft, id });
      const what = 'its curve, from the original file; what was written down of it is lost';
      told.madeAgain.push({ id, name: draft.name, what });
    }
  }
  for (const id of headless.filter((one) => !kept.has(one)))
    told.lost.push({
      kind: 'pull',
      id,
      name: '',
      what: 'what was written down of it is lost, and no file gives it again',
    });
}

/** The pulls that a file gives when it is read once more; none where its bytes are not whole. Read once. */
function pullsReadAgain(
  database: BetterSqlite3.Database,
  folder: string,
  readAgain: ReadAgain,
): (hash: string | null) => Pull[] {
  const find = database.prepare('select hash, name, byteLength, addedAt, mapping from file where hash = ?');
  let last: { hash: string; pulls: Pull[] } | null = null;
  return (hash) => {
    if (hash === null) return [];
    if (last?.hash === hash) return last.pulls;
    const row = find.get(hash) as (Omit<OriginalFile, 'mapping'> & { mapping: string }) | undefined;
    const bytes = row ? wholeOriginal(folder, hash) : null;
    const pulls = row && bytes ? readAgain({ ...row, mapping: JSON.parse(row.mapping) }, bytes) : null;
    last = { hash, pulls: pulls ?? [] };
    return last.pulls;
  };
}

/** The bytes of an original where they are those that were stored; else `null`. */
export function wholeOriginal(folder: string, hash: string): Uint8Array | null {
  try {
    const bytes = readFileSync(originalPath(folder, hash));
    return hashOfBytes(bytes) === hash ? bytes : null;
  } catch {
    return null;
  }
}

interface StoredHead {
  id: string;
  name: string;
  form: Pull['form'];
  fileHash: string | null;
  channelsHash: string;
}

const heads = (database: BetterSqlite3.Database): StoredHead[] =>
  database
    .prepare('select id, name, form, fileHash, channelsHash from pull order by sequence')
    .all() as StoredHead[];

function channelsIn(database: BetterSqlite3.Database, pullId: string): Channel[] {
  const rows = database.prepare('select * from channel where pullId = ? order by place').all(pullId);
  return (rows as (Omit<Channel, 'values'> & { samples: Uint8Array })[]).map(({ samples, ...rest }) => ({
    ...rest,
    values: samplesFromBytes(samples),
  }));
}

function insertChannels(
  database: BetterSqlite3.Database,
  pullId: string,
  channels: readonly Channel[],
): void {
  const insert = database.prepare(
    `insert into channel (pullId, place, meaning, name, unit, kind, origin, count, samples)
      values (?, ?, ?, ?, ?, ?, ?, ?, ?)`,
  );
  for (const [place, { meaning, name, unit, kind, origin, values }] of channels.entries())
    insert.run(pullId, place, meaning, name, unit, kind, origin, values.length, bytesFromSamples(values));
}

function insertHead(database: BetterSqlite3.Database, pull: Pull): void {
  const row = rowFromPull(pull);
  const names = Object.keys(row);
  database
    .prepare(`insert into pull (${names.join(', ')}) values (${names.map((name) => `@${name}`).join(', ')})`)
    .run(row);
}
