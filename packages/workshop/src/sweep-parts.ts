import { readdir, rm } from 'node:fs/promises';
import { join } from 'node:path';
import { isRunning } from '@pullbook/store';

/**
 * Takes away what killed programs left half made in a folder: entries named with the prefix and the number of the program
 * that made them. What bears this program's own number is left too where `ownToo`: numbers are given out again.
 */
export async function sweepParts(
  folder: string,
  prefix: string,
  { ownToo }: { ownToo: boolean },
): Promise<void> {
  for (const name of await readdir(folder)) {
    const maker = name.startsWith(prefix) ? Number(name.slice(prefix.length).split('-')[0]) : Number.NaN;
    const isLeft = maker === process.pid ? ownToo : Number.isInteger(maker) && !isRunning(maker);
    if (isLeft) await rm(join(folder, name), { recursive: true, force: true });
  }
}
