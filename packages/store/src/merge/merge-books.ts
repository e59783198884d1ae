import { randomUUID } from 'node:crypto';
import { chmodSync, copyFileSync, existsSync, mkdirSync, readdirSync, realpathSync, rmSync } from 'node:fs';
import { readFile, rm } from 'node:fs/promises';
import { join, resolve } from 'node:path';
import type { Connection } from '../connection.ts';
import { Database } from '../driver.ts';
import { isRunning } from '../is-running.ts';
import { BookTrouble } from '../model.ts';
import { openConnection } from '../open-book.ts';
import { hashOfBytes, originalPath, placePart, writePart } from '../originals.ts';
import { databaseFile } from '../places.ts';
import { writing } from '../transaction.ts';
import { asBookTrouble } from '../trouble.ts';
import { mergeAttached } from './attached.ts';
import { digest, writeEntry } from './log.ts';
import { bringsSomething, type MergeReport } from './model.ts';
import type { MergeSides } from './state.ts';

const LOCK_WAIT_MS = 30_000;
/** A copy has the rights of what it was copied from; of a disk that is only read, none to write. */
const OWN_FILE = 0o600;

/** Takes back all that a dry run wrote. */
class DryRun extends Error {
  readonly report: MergeReport;
  constructor(report: MergeReport) {
    super('dry run');
    this.report = report;
  }
}

/**
 * Brings everything of another book into this one, in one transaction: all of it or nothing. The other is only read (a
 * copy, so that an older schema stays as it is there); its originals come with it, each checked by its hash.
 *
 * Things are the same by their global ids. Nothing of either is lost: what both changed stays as it is here, and what the
 * other says is in the log. Merging once more changes nothing.
 *
 * @example await mergeBooks('shop-book', 'laptop-book', { dryRun: false })
 */
export async function mergeBooks(
  folder: string,
  otherFolder: string,
  { dryRun }: { dryRun: boolean },
): Promise<MergeReport> {
  const root = resolve(folder);
  const other = resolve(otherFolder);
  assertTwo(root, other);
  const connection = await openConnection(root, LOCK_WAIT_MS, null);
  const aside = join(root, `merge-${process.pid}-${randomUUID()}.part`);
  try {
    sweep(root);
    await copyOfOther(other, aside, root);
    connection.database.prepare('attach ? as other').run(databaseFile(aside));
    return await merge(connection, other, dryRun);
  } catch (failure) {
    if (failure instanceof DryRun) return failure.report;
    throw asBookTrouble(failure, root);
  } finally {
    await connection.rows.destroy();
    await rm(aside, { recursive: true, force: true });
  }
}

async function merge(connection: Connection, other: string, dryRun: boolean): Promise<MergeReport> {
  const { database, folder } = connection;
  const { parts, missing } = await partsOfOriginals(connection, other, dryRun);
  try {
    return await writing(connection, async () => {
      const sides = sidesOf(connection);
      const report: MergeReport = { ...mergeAttached(database, sides), dryRun, missingOriginals: missing };
      if (dryRun) throw new DryRun(report);
      if (bringsSomething(report)) writeMerge(connection, sides, report);
      for (const [hash, part] of parts) await placePart(folder, hash, part);
      parts.clear();
      return report;
    });
  } finally {
    for (const part of parts.values()) await rm(part, { force: true });
  }
}

function sidesOf({ database, now }: Connection): MergeSides {
  const book = (schema: string) =>
    database.prepare(`select id, name, invented from ${schema}.book`).get() as {
      id: string;
      name: string;
      invented: number;
    };
  const { id, name } = book('main');
  const theirs = book('other');
  return {
    ours: { id, name },
    theirs: { id: theirs.id, name: theirs.name, invented: theirs.invented === 1 },
    at: now().toISOString(),
  };
}

/** Originals that only the other has, written and flushed beside their places. */
async function partsOfOriginals(
  { database, folder }: Connection,
  other: string,
  dryRun: boolean,
): Promise<{ parts: Map<string, string>; missing: MergeReport['missingOriginals'] }> {
  const fresh = database
    .prepare(
      'select hash, name from other.file where hash not in (select hash from main.file) order by sequence',
    )
    .all() as MergeReport['missingOriginals'];
  const parts = new Map<string, string>();
  const missing: MergeReport['missingOriginals'] = [];
  for (const { hash, name } of fresh) {
    const bytes = await readFile(originalPath(other, hash)).catch(() => null);
    if (bytes === null || hashOfBytes(bytes) !== hash) missing.push({ hash, name });
    else if (!dryRun) parts.set(hash, await writePart(folder, hash, bytes));
  }
  return { parts, missing };
}

function writeMerge({ database }: Connection, { ours, theirs, at }: MergeSides, report: MergeReport): void {
  const { added, taken, conflicts, renamed, samePulls, logEntries } = report;
  const told = { added, taken: taken.length, conflicts: conflicts.length, renamed, samePulls, logEntries };
  const uid = `${ours.id}/merge-${digest([theirs.id, at]).slice(0, 16)}`;
  writeEntry(database, {
    uid,
    undoes: null,
    together: uid,
    at,
    act: 'books merged',
    subject: `book ${ours.id}`,
    reason: `with the book "${theirs.name}"`,
    before: 'null',
    after: JSON.stringify(told),
  });
}

/** The other's database as it is at one moment, brought to the newest schema, in a folder of its own. */
async function copyOfOther(other: string, aside: string, root: string): Promise<void> {
  if (!existsSync(databaseFile(other))) {
    const message = `There is no book in ${other}. Nothing was changed. Give the folder of the book to be merged in; of an export or a backup, restore a book first.`;
    throw new BookTrouble('missing', message);
  }
  mkdirSync(aside, { recursive: true });
  try {
    const source = new Database(databaseFile(other), { readonly: true });
    try {
      source.exec('begin');
      source.prepare('select count(*) from sqlite_schema').get();
      await source.backup(databaseFile(aside));
    } finally {
      source.close();
    }
  } catch {
    // On a disk that takes no writing SQLite cannot share the file; then nobody else writes it either.
    for (const ending of ['', '-wal']) {
      if (!existsSync(databaseFile(other) + ending)) continue;
      copyFileSync(databaseFile(other) + ending, databaseFile(aside) + ending);
      chmodSync(databaseFile(aside) + ending, OWN_FILE);
    }
  }
  const copy = await openConnection(aside, LOCK_WAIT_MS, null).catch((failure: unknown) => {
    if (!(failure instanceof BookTrouble)) throw failure;
    // The copy stands on our disk, and what is in it is theirs.
    const whose = ['full', 'read-only'].includes(failure.code) ? root : other;
    throw new BookTrouble(failure.code, failure.message.replaceAll(aside, whose));
  });
  try {
    const said = copy.database.pragma('quick_check(1)', { simple: true });
    if (said !== 'ok') throw damagedOther(other, String(said));
    copy.database.pragma('journal_mode = DELETE');
  } catch (failure) {
    const code = failure instanceof Error && 'code' in failure ? String(failure.code) : '';
    throw /^SQLITE_(CORRUPT|NOTADB|FORMAT)/.test(code) ? damagedOther(other, String(failure)) : failure;
  } finally {
    await copy.rows.destroy();
  }
}

function damagedOther(other: string, said: string): BookTrouble {
  const message = `The other book ${other} is damaged (${said}). Nothing was changed, here or there. Run "pullbook rescue --book ${other}", then merge it.`;
  return new BookTrouble('damaged', message);
}

function assertTwo(root: string, other: string): void {
  if (!existsSync(root) || !existsSync(other) || realpathSync(root) !== realpathSync(other)) return;
  const message = `${other} is the book itself. Nothing was changed. Give the folder of another book.`;
  throw new BookTrouble('exists', message);
}

/** Copies that a merge left which was killed; one that is still at work has its own. */
function sweep(root: string): void {
  for (const name of readdirSync(root))
    if (/^merge-.*\.part$/.test(name) && !isRunning(Number(name.split('-')[1])))
      rmSync(join(root, name), { recursive: true, force: true });
}
