import { randomUUID } from 'node:crypto';
import { existsSync } from 'node:fs';
import { rename, rm, writeFile } from 'node:fs/promises';
import { basename, join, relative, resolve } from 'node:path';
import type BetterSqlite3 from 'better-sqlite3';
import { Database } from '../driver.ts';
import { flushFile } from '../file-hash.ts';
import { BookTrouble } from '../model.ts';
import { flushFolder } from '../originals.ts';
import { databaseFile } from '../places.ts';
import { asBookTrouble } from '../trouble.ts';
import { REPORT, setAside, unfinishedRescue } from './aside.ts';
import { tellWhatTheLogMisses } from './losses.ts';
import type { ReadAgain, RescueReport } from './model.ts';
import { openPages, type Pages } from './pages.ts';
import { mendPulls } from './pulls.ts';
import { mendFiles, mendReferences } from './references.ts';
import { lastNumbers } from './rows.ts';
import { fillStaging, openStaging } from './staging.ts';

/** Name of the setting that holds the report until a person has seen it. */
export const RESCUE_TO_TELL = 'rescueToTell';

/**
 * Makes a sound book of a damaged one, in its place: everything on pages that can still be read, curves from the original
 * files where their pages cannot, each proved by its hash. The damaged files stay untouched in a folder of their own
 * beside it. What is lost is told in the report, in the log and in that folder.
 *
 * Killed at any moment, the next rescue begins again from the damaged files.
 *
 * @throws {BookTrouble} where another program has the book open, or the disk takes no more
 */
export async function rescueBook(folder: string, readAgain: ReadAgain, now: Date): Promise<RescueReport> {
  const root = resolve(folder);
  const at = now.toISOString();
  try {
    const aside = (await unfinishedRescue(root)) ?? (await setAside(root, at, () => assertAlone(root)));
    assertAlone(root);
    const fresh = join(aside, 'new.sqlite');
    try {
      await removeUnfinished(fresh);
      const report = makeSound(root, aside, fresh, readAgain, at);
      // Written before and named after: a disk that is full then stops nothing, and a kill before leaves it unfinished.
      const told = join(aside, `${REPORT}.part`);
      await writeFile(told, `${JSON.stringify(report, null, 2)}\n`);
      await putInPlace(root, fresh);
      await rename(told, join(aside, REPORT));
      return report;
    } catch (failure) {
      await removeUnfinished(fresh);
      throw failure;
    }
  } catch (failure) {
    throw asBookTrouble(failure, root);
  }
}

/** A book that was not made whole; the damaged files are still beside it. */
async function removeUnfinished(fresh: string): Promise<void> {
  for (const ending of ['', '-journal']) await rm(`${fresh}${ending}`, { force: true });
}

function makeSound(
  root: string,
  aside: string,
  fresh: string,
  readAgain: ReadAgain,
  at: string,
): RescueReport {
  const pages = openPages(databaseFile(aside), `${databaseFile(aside)}-wal`);
  const staging = openStaging(fresh);
  const { database } = staging;
  try {
    const damagedFolder = relative(root, aside);
    const report: RescueReport = {
      at,
      damagedFolder,
      kept: {},
      madeAgain: [],
      lost: [],
      poorer: [],
      unreadable: 0,
    };
    report.unreadable = fillStaging(staging, pages).unreadable;
    const mend = database.transaction(() => {
      mendBook(database, root, at, report);
      mendFiles(database, root, at, report);
      mendPulls(database, root, readAgain, report);
      mendReferences(database, report);
      tellWhatTheLogMisses(database, lastNumbers(pages).get('log') ?? 0, report);
      tellMissingPages(pages, report);
      report.kept = keptThings(database);
      writeDown(database, report);
    });
    mend();
    staging.settle();
    const said = database.pragma('integrity_check(1)', { simple: true });
    if (said !== 'ok') throw new Error(`the rescued book is not sound: ${said}`);
    return report;
  } finally {
    database.close();
    pages.close();
  }
}

/** The line that says whose book it is; its id also stands in the log. */
function mendBook(database: BetterSqlite3.Database, root: string, at: string, report: RescueReport): void {
  const is = database.prepare('select id from book').pluck().get() as string | undefined;
  if (is === undefined) {
    const created = database
      .prepare(`select subject, at from log where act = 'book created' order by id limit 1`)
      .get() as { subject: string; at: string } | undefined;
    const id = created?.subject.slice('book '.length) ?? randomUUID();
    database
      .prepare('insert into book (id, name, invented, createdAt) values (?, ?, 0, ?)')
      .run(id, basename(root), created?.at ?? at);
    const what = created ? 'its name is lost; it has the name of its folder' : 'its name and its id are lost';
    report.poorer.push({ kind: 'book', id, name: '', what });
  }
  // Entries of a schema before entries had global names: as its migration fills them.
  database.exec(`update log set uid = (select id from book) || '/' || id where uid = '';
    update log set together = uid where together = '';`);
}

/** A file that was cut says so itself, where its header is whole. */
function tellMissingPages({ stated, count }: Pages, { lost }: RescueReport): void {
  if (stated === null || stated <= count) return;
  const what = `the end of the file is gone: ${stated - count} of ${stated} pages`;
  lost.push({ kind: 'page', id: '', name: '', what });
}

const COUNTED: Record<string, string> = {
  engines: 'engine',
  combinations: 'combination',
  packages: 'package',
  setUps: 'setUp',
  sessions: 'session',
  pulls: 'pull',
  files: 'file',
  trials: 'trial',
  cells: 'cell',
  compressorMaps: 'compressorMap',
  publications: 'publication',
  enquiries: 'enquiry',
  log: 'log',
};

function keptThings(database: BetterSqlite3.Database): Record<string, number> {
  const count = (table: string) =>
    database.prepare(`select count(*) from "${table}"`).pluck().get() as number;
  return Object.fromEntries(Object.entries(COUNTED).map(([name, table]) => [name, count(table)]));
}

/** The rescue stands in the log as any act does, and in a setting until a person has seen it. */
function writeDown(database: BetterSqlite3.Database, report: RescueReport): void {
  const bookId = database.prepare('select id from book').pluck().get() as string;
  const id = database.prepare('select coalesce(max(id), 0) + 1 from log').pluck().get() as number;
  const uid = `${bookId}/${id}`;
  const told = JSON.stringify(report);
  database
    .prepare(
      `insert into log (id, uid, together, at, act, subject, reason, before, after)
        values (?, ?, ?, ?, 'book rescued', ?, 'its file was damaged', 'null', ?)`,
    )
    .run(id, uid, uid, report.at, `book ${bookId}`, told);
  database.prepare('insert or replace into setting (name, value) values (?, ?)').run(RESCUE_TO_TELL, told);
}

/** Refuses while another program has the book open, as far as a damaged file lets that be seen. */
function assertAlone(root: string): void {
  if (!existsSync(databaseFile(root))) return;
  let database: BetterSqlite3.Database | null = null;
  try {
    database = new Database(databaseFile(root), { timeout: 100 });
    database.pragma('locking_mode = exclusive');
    database.exec('begin immediate; rollback');
  } catch (failure) {
    if (!(failure instanceof Error && 'code' in failure)) throw failure;
    if (!/^SQLITE_(BUSY|LOCKED)/.test(String(failure.code))) return;
    const message = `The book ${root} is open in another program (a server, perhaps). Nothing was changed. Stop it, then rescue the book.`;
    throw new BookTrouble('locked', message);
  } finally {
    database?.close();
  }
}

async function putInPlace(root: string, fresh: string): Promise<void> {
  await flushFile(fresh);
  // The journal of the damaged file must be gone before another file has its name, or it would be played into that one.
  for (const ending of ['-wal', '-shm', '-journal'])
    await rm(`${databaseFile(root)}${ending}`, { force: true });
  await flushFolder(root);
  await rename(fresh, databaseFile(root));
  await flushFolder(root);
}
