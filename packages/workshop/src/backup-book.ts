import { accepted, type Result, refused, remark } from '@pullbook/core/remark';
import {
  type Backup,
  type Book,
  BookTrouble,
  backUpBook,
  backupIn,
  checkBackup,
  thinBackups,
} from '@pullbook/store';
import { settingsOf } from './settings.ts';

/** A backup for the edge. */
export interface BackupReport {
  folder: string;
  /** ISO 8601 */
  madeAt: string;
  pulls: number;
  files: number;
  /** Original files that the book itself no longer has whole. */
  missingOriginals: { hash: string; name: string }[];
}

/** A backup that was made now. */
export interface MadeBackup extends BackupReport {
  /** When the earlier ones were made that were too many and taken away, ISO 8601. */
  takenAway: string[];
}

/** How it stands with the backups of a book. */
export interface BackupState {
  schemaVersion: 1;
  /** From the shop's settings; `null`: none is set. */
  folder: string | null;
  last: BackupReport | null;
  /** Why the last try of this program made none; `null`: none failed. */
  trouble: string | null;
}

export interface BackupCheckReport extends BackupReport {
  /** What is wrong with it, in words; empty: it can be restored whole. */
  faults: string[];
}

/** A backup is due when the last is older, ms. */
const DAY_MS = 24 * 60 * 60 * 1000;

/** Why the last try failed, for as long as the book is open. */
const troubles = new WeakMap<Book, string>();

/**
 * Makes a backup while others go on working with the book, and takes away earlier ones that are too many (see
 * `thinBackups`), unless `keepAll`. `to`: the folder; `null`: the one of the settings. Refused where none is set.
 */
export async function backUp(
  book: Book,
  to: string | null,
  now: Date,
  { keepAll = false } = {},
): Promise<Result<MadeBackup>> {
  const folder = to ?? (await settingsOf(book)).backupFolder;
  if (folder === null) {
    const message =
      'No folder for backups is set. Name one with --to, or keep one: pullbook settings --set backupFolder=… (best on another disk).';
    return refused(remark('refusal', 'no-backup-folder', message));
  }
  try {
    const report = reportOf(folder, await backUpBook(book.folder, folder, now));
    const thinned = keepAll ? [] : await thinBackups(folder, now);
    troubles.delete(book);
    return accepted({ ...report, takenAway: thinned.map(({ madeAt }) => madeAt) });
  } catch (trouble) {
    if (trouble instanceof BookTrouble) troubles.set(book, trouble.message);
    throw trouble;
  }
}

/** Makes a backup when a folder is set and the last is older than a day; what goes wrong is told by `backupState`. */
export async function backUpIfDue(book: Book, now: Date): Promise<void> {
  const { folder, last } = await backupState(book);
  if (folder === null || (last !== null && now.getTime() - Date.parse(last.madeAt) < DAY_MS)) return;
  try {
    await backUp(book, folder, now);
  } catch (trouble) {
    troubles.set(book, trouble instanceof Error ? trouble.message : String(trouble));
  }
}

/** When and where the last backup was made, and whether the last try failed. */
export async function backupState(book: Book): Promise<BackupState> {
  const folder = (await settingsOf(book)).backupFolder;
  const last = folder === null ? null : await backupIn(folder).catch(() => null);
  const trouble = troubles.get(book) ?? null;
  return { schemaVersion: 1, folder, last: last && reportOf(folder!, last), trouble };
}

/** Reads all of a backup. `at`: the beginning of its time; the newest for `null`. */
export async function checkBackupFolder(folder: string, at: string | null): Promise<BackupCheckReport> {
  const { backup, faults } = await checkBackup(folder, at);
  return { ...reportOf(folder, backup), faults };
}

function reportOf(folder: string, { madeAt, pulls, files, missing }: Backup): BackupReport {
  return { folder, madeAt, pulls, files, missingOriginals: missing };
}
