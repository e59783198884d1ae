import type BetterSqlite3 from 'better-sqlite3';
import type { RescueReport } from './model.ts';

const TABLE_OF_KIND: Record<string, string> = {
  engine: 'engine',
  combination: 'combination',
  package: 'package',
  'set-up': 'setUp',
  session: 'session',
  trial: 'trial',
  pull: 'pull',
  cell: 'cell',
  file: 'file',
  prediction: 'prediction',
  compressorMap: 'compressorMap',
  publication: 'publication',
  enquiry: 'enquiry',
};

/**
 * What the log says was added and is not there any more, unless it was told already; and how many entries of the log
 * itself are lost, which its numbers without gaps tell, up to the last number it is known to have given.
 */
export function tellWhatTheLogMisses(
  database: BetterSqlite3.Database,
  lastNumber: number,
  { lost, poorer }: Pick<RescueReport, 'lost' | 'poorer'>,
): void {
  const told = new Set([...lost, ...poorer].map(({ kind, id }) => `${kind} ${id}`));
  const added = database
    .prepare(`select distinct subject from log where act like '% added'`)
    .pluck()
    .all() as string[];
  for (const subject of added) {
    const [kind = '', ...rest] = subject.split(' ');
    const id = rest.join(' ');
    const table = TABLE_OF_KIND[kind];
    if (table === undefined || told.has(subject) || isThere(database, table, id)) continue;
    const last = lastState(database, subject);
    lost.push({
      kind,
      id,
      name: last?.name ?? '',
      what: last ? 'its line is lost; the log holds what it was last changed to' : 'its line is lost',
    });
  }
  const { newest, count } = database
    .prepare('select coalesce(max(id), 0) as newest, count(*) as count from log')
    .get() as { newest: number; count: number };
  const given = Math.max(newest, lastNumber);
  if (given > count)
    lost.push({ kind: 'log', id: '', name: '', what: `${given - count} of ${given} entries are lost` });
}

function isThere(database: BetterSqlite3.Database, table: string, id: string): boolean {
  const key = table === 'file' ? 'hash' : 'id';
  return database.prepare(`select 1 from "${table}" where ${key} = ?`).get(id) !== undefined;
}

function lastState(database: BetterSqlite3.Database, subject: string): { name: string } | null {
  const after = database
    .prepare(`select after from log where subject = ? and after <> 'null' order by id desc limit 1`)
    .pluck()
    .get(subject) as string | undefined;
  if (after === undefined) return null;
  const state = JSON.parse(after) as { name?: string; question?: string };
  return { name: state.name ?? state.question ?? '' };
}
