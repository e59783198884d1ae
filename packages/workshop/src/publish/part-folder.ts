import { mkdir, readdir, rm } from 'node:fs/promises';
import { join } from 'node:path';
import { isRunning } from '@pullbook/store';

const PREFIX = '.pullbook-part-';
let opened = 0;

/**
 * Does `work` with a folder beside the files to be, on the same disk, for what is not whole yet. It is gone afterwards
 * whatever happens; what a killed program left there is swept by the next.
 */
export async function withPartFolder<T>(out: string, work: (part: string) => Promise<T>): Promise<T> {
  await sweepLeftovers(out);
  opened += 1;
  const part = join(out, `${PREFIX}${process.pid}-${opened}`);
  try {
    await mkdir(part);
    return await work(part);
  } finally {
    await rm(part, { recursive: true, force: true });
  }
}

async function sweepLeftovers(out: string): Promise<void> {
  for (const name of await readdir(out)) {
    const [maker] = name.startsWith(PREFIX) ? name.slice(PREFIX.length).split('-').map(Number) : [];
    if (maker !== undefined && Number.isInteger(maker) && maker !== process.pid && !isRunning(maker))
      await rm(join(out, name), { recursive: true, force: true });
  }
}
