import { existsSync, statSync } from 'node:fs';
import type BetterSqlite3 from 'better-sqlite3';
import { originalPath } from '../originals.ts';
import type { RescueLoss, RescueReport } from './model.ts';
import { wholeOriginal } from './pulls.ts';

/** Gives every surviving pull its file's line again, and tells which originals are not whole. */
export function mendFiles(
  database: BetterSqlite3.Database,
  folder: string,
  at: string,
  { lost, poorer }: Pick<RescueReport, 'lost' | 'poorer'>,
): void {
  const unlisted = database
    .prepare(
      'select distinct fileHash from pull where fileHash is not null and fileHash not in (select hash from file)',
    )
    .pluck()
    .all() as string[];
  const insert = database.prepare(
    `insert into file (hash, name, byteLength, addedAt, mapping) values (?, ?, ?, ?, 'null')`,
  );
  for (const hash of unlisted) {
    const path = originalPath(folder, hash);
    insert.run(hash, `name lost (${hash.slice(0, 8)})`, existsSync(path) ? statSync(path).size : 0, at);
    poorer.push({
      kind: 'file',
      id: hash,
      name: '',
      what: 'its name and the meaning of its columns are lost',
    });
  }
  const files = database.prepare('select hash, name from file order by sequence').all();
  for (const { hash, name } of files as { hash: string; name: string }[]) {
    if (wholeOriginal(folder, hash) === null)
      lost.push({
        kind: 'original',
        id: hash,
        name,
        what: 'its bytes are gone or altered; its curves are kept',
      });
  }
}

interface Broken {
  table: string;
  rowid: number;
  parent: string;
  fkid: number;
}

/**
 * Takes out what refers to things that are lost, and tells each: a field that may be empty is emptied, a line that stands
 * or falls with it goes. A combination keeps a place to stand on: its engine comes back without its name.
 */
export function mendReferences(
  database: BetterSqlite3.Database,
  report: Pick<RescueReport, 'lost' | 'poorer'>,
): void {
  bringBackEngines(database, report.poorer);
  for (;;) {
    const broken = database.pragma('foreign_key_check') as Broken[];
    if (broken.length === 0) return;
    for (const one of broken) mendReference(database, one, report);
  }
}

function bringBackEngines(database: BetterSqlite3.Database, poorer: RescueLoss[]): void {
  const gone = database
    .prepare('select distinct engineId from combination where engineId not in (select id from engine)')
    .pluck()
    .all() as string[];
  for (const id of gone) {
    database
      .prepare(`insert into engine (id, name, buildRevision, notes, invented) values (?, ?, '', '', 0)`)
      .run(id, `engine, name lost (${id.slice(0, 8)})`);
    poorer.push({ kind: 'engine', id, name: '', what: 'its name and build are lost' });
  }
}

function mendReference(
  database: BetterSqlite3.Database,
  { table, rowid, parent, fkid }: Broken,
  report: Pick<RescueReport, 'lost' | 'poorer'>,
): void {
  const keys = database.pragma(`foreign_key_list("${table}")`) as { id: number; from: string }[];
  const field = keys.find(({ id }) => id === fkid)!.from;
  const columns = database.pragma(`table_info("${table}")`) as { name: string; notnull: number }[];
  const row = database.prepare(`select * from "${table}" where rowid = ?`).get(rowid) as
    | Record<string, unknown>
    | undefined;
  // Another of its references may have taken the row out in this round.
  if (!row) return;
  const mayBeEmpty = columns.find(({ name }) => name === field)!.notnull === 0;
  if (mayBeEmpty) database.prepare(`update "${table}" set "${field}" = null where rowid = ?`).run(rowid);
  else database.prepare(`delete from "${table}" where rowid = ?`).run(rowid);
  const stays = mayBeEmpty || row.id === undefined;
  (stays ? report.poorer : report.lost).push({
    kind: KIND_OF_TABLE[table] ?? table,
    id: String(row.id ?? row.trialId ?? row.combinationId),
    name: String(row.name ?? row.question ?? ''),
    what: `its ${KIND_OF_TABLE[parent] ?? parent} ${String(row[field]).slice(0, 8)} is lost${stays ? '' : ', and it with that'}`,
  });
}

const KIND_OF_TABLE: Record<string, string> = {
  setUp: 'set-up',
  trialPull: 'trial',
  trialCombination: 'trial',
  combinationPackage: 'combination',
};
