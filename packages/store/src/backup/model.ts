import { existsSync } from 'node:fs';
import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { BookTrouble } from '../model.ts';

/**
 * What is said beside each copy of the database in a backup folder. The folder holds `book-<time>.sqlite` with a
 * `book-<time>.json` each, and one `originals/` for all of them, laid out as a book's.
 */
export interface Backup {
  format: typeof BACKUP_FORMAT;
  schemaVersion: 1;
  bookId: string;
  bookName: string;
  /** ISO 8601 */
  madeAt: string;
  /** Name of the copy in the folder. */
  database: string;
  /** SHA-256 of the copy, hex. */
  databaseHash: string;
  pulls: number;
  files: number;
  /** Originals that the book itself no longer had whole. */
  missing: { hash: string; name: string }[];
}

export const BACKUP_FORMAT = 'pullbook backup';

/** The name of the copy made at a time, without its ending: sorts by time, and every file system takes it. */
export const backupStem = (madeAt: string): string => `book-${madeAt.replaceAll(/[:.]/g, '-')}`;

/** The backups in a folder, newest first; empty where there is none. A text that is not one of ours is passed over. */
export async function backupsIn(folder: string): Promise<Backup[]> {
  if (!existsSync(folder)) return [];
  const names = (await readdir(folder)).filter((name) => /^book-.*\.json$/.test(name));
  const found: Backup[] = [];
  for (const name of names) {
    const backup = await readBackup(join(folder, name));
    if (backup) found.push(backup);
  }
  return found.sort((one, other) => (one.madeAt < other.madeAt ? 1 : -1));
}

/** The newest backup in a folder; `null`: none. */
export async function backupIn(folder: string): Promise<Backup | null> {
  return (await backupsIn(folder))[0] ?? null;
}

/** The backup whose time begins as asked, the newest for `null`. Throws `BookTrouble` saying which there are. */
export async function chosenBackup(folder: string, at: string | null): Promise<Backup> {
  const all = await backupsIn(folder);
  const [chosen] = at === null ? all : all.filter(({ madeAt }) => madeAt.startsWith(at));
  if (chosen) return chosen;
  const there =
    all.length === 0
      ? 'there is none: give the folder that "pullbook backup --to" was given'
      : `there are ${all.map(({ madeAt }) => madeAt).join(', ')}`;
  throw new BookTrouble('missing', `No backup${at === null ? '' : ` of ${at}`} in ${folder}: ${there}.`);
}

async function readBackup(path: string): Promise<Backup | null> {
  try {
    const parsed = JSON.parse(await readFile(path, 'utf8')) as Partial<Backup> | null;
    return parsed?.format === BACKUP_FORMAT && parsed.schemaVersion === 1 ? (parsed as Backup) : null;
  } catch {
    return null;
  }
}
