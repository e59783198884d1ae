import { existsSync, readdirSync } from 'node:fs';
import { copyFile, mkdir, rename, rm } from 'node:fs/promises';
import { join } from 'node:path';
import { flushFile, hashOfFile } from '../file-hash.ts';
import { flushFolder } from '../originals.ts';
import { databaseFile } from '../places.ts';

/** Stands in the folder of the damaged files once their rescue is finished. */
export const REPORT = 'rescue.json';

const PART = '.part';

/**
 * Copies the damaged files as they are into a folder of their own, flushed: they are taken away later. The folder has its
 * name once the copy is whole; where the files cannot be copied, or `allowed` throws, none is left.
 */
export async function setAside(root: string, at: string, allowed: () => void): Promise<string> {
  const aside = join(root, `damaged-${at.replaceAll(/[:.]/g, '-')}`);
  const part = `${aside}${PART}`;
  await sweepParts(root);
  await mkdir(part, { recursive: true });
  try {
    for (const ending of ['', '-wal', '-journal']) {
      const file = `${databaseFile(root)}${ending}`;
      const copy = `${databaseFile(part)}${ending}`;
      if (!existsSync(file)) continue;
      await copyFile(file, copy);
      await flushFile(copy);
    }
    // Asked after the copy: to open a damaged file, SQLite may play its journal into it.
    allowed();
    await flushFolder(part);
    await rename(part, aside);
    await flushFolder(root);
    return aside;
  } catch (failure) {
    await rm(part, { recursive: true, force: true });
    throw failure;
  }
}

/** Copies of a rescue that was killed before they were whole: the files they are of are still in their place. */
async function sweepParts(root: string): Promise<void> {
  for (const name of readdirSync(root))
    if (name.startsWith('damaged-') && name.endsWith(PART))
      await rm(join(root, name), { recursive: true, force: true });
}

/** The folder of a rescue that was killed: the book is not there any more, or is still the one it began with. */
export async function unfinishedRescue(root: string): Promise<string | null> {
  if (!existsSync(root)) return null;
  const asides = readdirSync(root)
    .filter(
      (name) => name.startsWith('damaged-') && !name.endsWith(PART) && !existsSync(join(root, name, REPORT)),
    )
    .sort()
    .reverse();
  for (const name of asides) {
    const aside = join(root, name);
    if (!existsSync(databaseFile(aside))) continue;
    if (!existsSync(databaseFile(root))) return aside;
    const [now, then] = [await hashOfFile(databaseFile(root)), await hashOfFile(databaseFile(aside))];
    if (now === then && !existsSync(`${databaseFile(root)}-wal`)) return aside;
  }
  return null;
}
