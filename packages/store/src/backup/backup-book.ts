import { existsSync } from 'node:fs';
import { mkdir, rename, rm, writeFile } from 'node:fs/promises';
import { join, resolve, sep } from 'node:path';
import { Database } from '../driver.ts';
import { copyOriginal, flushFile, hashOfFile } from '../file-hash.ts';
import { BookTrouble } from '../model.ts';
import { flushFolder } from '../originals.ts';
import { databaseFile, originalsFolder } from '../places.ts';
import { asBookTrouble } from '../trouble.ts';
import { BACKUP_FORMAT, type Backup, backupIn, backupStem } from './model.ts';

/**
 * Copies a book into a backup folder while others go on reading and writing it: the database as it is at one moment, and
 * the originals that are not there yet, each checked by its hash. The copy is checked, flushed and takes its name last:
 * killed on the way, no backup is there that is not whole. Earlier ones stay.
 *
 * @throws {BookTrouble} where the folder is the book's own, holds the backups of another book, or takes no more
 * @example await backUpBook('shop-book', 'disk/backup', new Date())
 */
export async function backUpBook(bookFolder: string, to: string, now: Date): Promise<Backup> {
  const source = resolve(bookFolder);
  const target = resolve(to);
  assertApart(source, target);
  const madeAt = now.toISOString();
  const stem = backupStem(madeAt);
  const part = join(target, `${stem}.sqlite.part`);
  try {
    await mkdir(originalsFolder(target), { recursive: true });
    const seen = await copyDatabase(source, part);
    await assertSameBook(target, seen);
    const missing: Backup['missing'] = [];
    for (const { hash, name } of seen.files) {
      if (!(await copyOriginal(source, target, hash))) missing.push({ hash, name });
    }
    const backup: Backup = {
      format: BACKUP_FORMAT,
      schemaVersion: 1,
      bookId: seen.id,
      bookName: seen.name,
      madeAt,
      database: `${stem}.sqlite`,
      databaseHash: await hashOfFile(part),
      pulls: seen.pulls,
      files: seen.files.length,
      missing,
    };
    await rename(part, join(target, backup.database));
    await writeWhole(join(target, `${stem}.json`), `${JSON.stringify(backup, null, 2)}\n`);
    await flushFolder(target);
    return backup;
  } catch (failure) {
    await rm(part, { force: true });
    throw asTroubleOf(failure, source, target);
  }
}

/**
 * What is damaged or locked is the book; what is full or may not be written is the folder of the backups. SQLite's own copying
 * does not say which of the two disks failed: where the book can be read, it was the other.
 */
function asTroubleOf(failure: unknown, source: string, target: string): unknown {
  const isEither = failure instanceof Error && 'code' in failure && failure.code === 'SQLITE_IOERR';
  if (isEither && canBeRead(source))
    return asBookTrouble(Object.assign(failure, { code: 'SQLITE_IOERR_WRITE' }), target, 'backup folder');
  const ofBook = asBookTrouble(failure, source);
  const isOfBook = ofBook instanceof BookTrouble && ['damaged', 'locked'].includes(ofBook.code);
  return isOfBook ? ofBook : asBookTrouble(failure, target, 'backup folder');
}

function canBeRead(source: string): boolean {
  const database = new Database(databaseFile(source), { readonly: true });
  try {
    return database.pragma('quick_check(1)', { simple: true }) === 'ok';
  } catch {
    return false;
  } finally {
    database.close();
  }
}

interface Seen {
  id: string;
  name: string;
  pulls: number;
  files: { hash: string; name: string }[];
}

/** The database as it is at one moment, in one file of its own; and what it holds. */
async function copyDatabase(source: string, part: string): Promise<Seen> {
  await rm(part, { force: true });
  const database = new Database(databaseFile(source), { readonly: true, fileMustExist: true });
  try {
    // One read transaction around all of it: without, each write of another program would start the copy again.
    database.exec('begin');
    const book = database.prepare('select id, name from book').get() as Pick<Seen, 'id' | 'name'>;
    const pulls = database.prepare('select count(*) from pull').pluck().get() as number;
    const files = database.prepare('select hash, name from file order by sequence').all() as Seen['files'];
    await database.backup(part);
    database.exec('commit');
    settle(part, source);
    await flushFile(part);
    return { ...book, pulls, files };
  } finally {
    database.close();
  }
}

/** Makes one plain file of the copy, without a journal beside it, and looks whether it is sound. */
function settle(part: string, source: string): void {
  const copy = new Database(part);
  try {
    copy.pragma('journal_mode = DELETE');
    const said = copy.pragma('quick_check(1)', { simple: true });
    if (said === 'ok') return;
    const message = `The book ${source} is damaged (${said}), so no backup was made of it and the earlier ones stay. Run "pullbook rescue --book ${source}", then make the backup again.`;
    throw new BookTrouble('damaged', message);
  } finally {
    copy.close();
  }
}

async function assertSameBook(target: string, { id, name }: Seen): Promise<void> {
  const earlier = await backupIn(target);
  if (earlier === null || earlier.bookId === id) return;
  const message = `${target} holds the backups of another book, "${earlier.bookName}". Nothing was added to them. Name another folder for "${name}".`;
  throw new BookTrouble('exists', message);
}

function assertApart(source: string, target: string): void {
  const isInside = (inner: string, outer: string) => inner === outer || inner.startsWith(outer + sep);
  if (!isInside(target, source) && !existsSync(databaseFile(target))) return;
  const message = `${target} is a book's own folder or inside it. A backup belongs elsewhere, best on another disk: name another folder.`;
  throw new BookTrouble('exists', message);
}

async function writeWhole(path: string, text: string): Promise<void> {
  await writeFile(`${path}.part`, text);
  await flushFile(`${path}.part`);
  await rename(`${path}.part`, path);
}
