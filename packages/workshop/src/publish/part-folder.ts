import { mkdir, rm } from 'node:fs/promises';
import { join } from 'node:path';
import { sweepParts } from '../sweep-parts.ts';

const PREFIX = '.pullbook-part-';
let opened = 0;

/**
 * Does `work` with a folder beside the files to be, on the same disk, for what is not whole yet. It is gone afterwards
 * whatever happens; what a killed program left there is swept by the next.
 */
export async function withPartFolder<T>(out: string, work: (part: string) => Promise<T>): Promise<T> {
  // Another publishing of this same program may be at work in the same folder.
  await sweepParts(out, PREFIX, { ownToo: false });
  opened += 1;
  const part = join(out, `${PREFIX}${process.pid}-${opened}`);
  try {
    await mkdir(part);
    return await work(part);
  } finally {
    await rm(part, { recursive: true, force: true });
  }
}
