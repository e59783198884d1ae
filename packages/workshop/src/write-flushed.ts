import { mkdir, open } from 'node:fs/promises';
import { dirname } from 'node:path';

/** To wait for one file after the other to be on the disk would take most of the time of a large export. */
const AT_ONCE = 8;

/** Writes files as they come, each flushed; several at once. After it returns all are on the disk; gives how many. */
export async function writeAllFlushed(
  files: AsyncIterable<{ path: string; bytes: Uint8Array }>,
): Promise<number> {
  const writing = new Set<Promise<void>>();
  let written = 0;
  try {
    for await (const { path, bytes } of files) {
      const one = writeFlushed(path, bytes);
      writing.add(one);
      const done = () => writing.delete(one);
      one.then(done, () => undefined);
      written += 1;
      if (writing.size >= AT_ONCE) await Promise.race(writing);
    }
    await Promise.all(writing);
    return written;
  } finally {
    // Where one failed the others must have ended too, before their folder is taken away.
    await Promise.allSettled(writing);
  }
}

async function writeFlushed(path: string, bytes: Uint8Array): Promise<void> {
  await mkdir(dirname(path), { recursive: true });
  const file = await open(path, 'w');
  try {
    await file.writeFile(bytes);
    await file.sync();
  } finally {
    await file.close();
  }
}
