import { existsSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { faultsOfDatabase } from '../database-faults.ts';
import { hashOfFile, hasOriginal } from '../file-hash.ts';
import { type Backup, chosenBackup } from './model.ts';

export interface BackupCheck {
  backup: Backup;
  /** What is wrong with it, in words; empty: it can be restored whole. */
  faults: string[];
}

/**
 * Reads all of a backup: the copy's hash, SQLite's own integrity check, the hash of every pull's channels and of every
 * original. `at`: the beginning of its time; the newest for `null`.
 */
export async function checkBackup(folder: string, at: string | null): Promise<BackupCheck> {
  const root = resolve(folder);
  const backup = await chosenBackup(root, at);
  const copy = join(root, backup.database);
  if (!existsSync(copy)) return { backup, faults: [`the copy ${copy} is not there`] };
  const faults: string[] = [];
  if ((await hashOfFile(copy)) !== backup.databaseHash)
    faults.push(`the copy ${copy} is not what was written`);
  const { faults: inside, files } = await faultsOfDatabase(copy);
  faults.push(...inside);
  const known = new Set(backup.missing.map(({ hash }) => hash));
  for (const { hash, name } of files) {
    if (!known.has(hash) && !(await hasOriginal(root, hash)))
      faults.push(`the original of "${name}" (${hash}) is not there whole`);
  }
  return { backup, faults };
}
