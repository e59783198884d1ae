import { existsSync } from 'node:fs';
import { mkdir, readdir, rename, rm } from 'node:fs/promises';
import { basename, dirname, resolve } from 'node:path';
import { sweepParts } from './sweep-parts.ts';

/**
 * Makes a folder whole or not at all: `make` fills a temporary one beside it, which then takes the name. Killed half
 * way, nothing stands under the name, and the next call sweeps what was left behind.
 */
export async function inNewFolder(folder: string, make: (temporary: string) => Promise<void>): Promise<void> {
  const wanted = resolve(folder);
  const parent = dirname(wanted);
  await mkdir(parent, { recursive: true });
  await sweepParts(parent, `${basename(wanted)}.part-`, { ownToo: true });
  const temporary = `${wanted}.part-${process.pid}`;
  try {
    await make(temporary);
    await rename(temporary, wanted);
  } catch (trouble) {
    await rm(temporary, { recursive: true, force: true });
    throw trouble;
  }
}

/** Whether something stands there that must not be overwritten: a file, or a folder with content. */
export async function isTaken(path: string): Promise<boolean> {
  if (!existsSync(path)) return false;
  return readdir(path).then(
    (names) => names.length > 0,
    () => true,
  );
}
