import { createHash, randomUUID } from 'node:crypto';
import { lstat, open, readdir, rename } from 'node:fs/promises';
import { basename, extname, join } from 'node:path';
import { type Remark, remark } from '@pullbook/core/remark';

/** What stands under a name now: `bytes` and `sha256` of all files of a folder in their order. */
export interface Placed {
  path: string;
  bytes: number;
  sha256: string;
  remarks: Remark[];
}

/**
 * Gives a finished file, or folder of numbered pictures, its name in one step, after all of it is on the disk. What stands
 * there already gives way where it is the same or was published from this book (`known`, by SHA-256); anything else of that name
 * may be somebody's work and is put aside under another.
 */
export async function putInPlace(part: string, out: string, known: ReadonlySet<string>): Promise<Placed> {
  const { bytes, sha256 } = await flushed(part);
  const name = basename(part);
  const path = join(out, name);
  for (let attempt = 1; ; attempt += 1) {
    try {
      const remarks = (await isThere(path)) ? await makeWay(part, out, sha256, known) : [];
      await rename(part, path);
      await flushFolder(out);
      return { path, bytes, sha256, remarks };
    } catch (trouble) {
      // Another publishing into this folder came in between.
      if (attempt === ATTEMPTS || !MEANWHILE.has((trouble as NodeJS.ErrnoException).code ?? ''))
        throw trouble;
    }
  }
}

const ATTEMPTS = 5;
const MEANWHILE = new Set(['ENOENT', 'EEXIST', 'ENOTEMPTY']);

async function makeWay(
  part: string,
  out: string,
  sha256: string,
  known: ReadonlySet<string>,
): Promise<Remark[]> {
  const name = basename(part);
  const path = join(out, name);
  const earlier = await digest(path);
  if (earlier && (earlier.sha256 === sha256 || known.has(earlier.sha256))) {
    // A file is replaced as the new one gets its name; a folder must go first, and goes with what is not whole yet.
    if ((await lstat(path)).isDirectory()) await rename(path, `${part}-${randomUUID()}`);
    if (earlier.sha256 === sha256) return [];
    return [remark('note', 'replaced', `${name} took the place of an earlier one of this book.`)];
  }
  const aside = await putAside(out, name);
  const message = `Something else stood under the name ${name}; it is now ${aside}. Delete it if it is not needed.`;
  return [remark('caution', 'put-aside', message)];
}

/** SHA-256 and bytes of a file or of a folder's files after one another; `null`: neither. */
async function digest(path: string): Promise<{ bytes: number; sha256: string } | null> {
  const hash = createHash('sha256');
  let bytes = 0;
  const files = await filesIn(path);
  if (files === null) return null;
  for (const file of files) {
    const handle = await open(file, 'r');
    try {
      for await (const piece of handle.createReadStream({ autoClose: false })) {
        hash.update(piece as Buffer);
        bytes += (piece as Buffer).length;
      }
    } finally {
      await handle.close();
    }
  }
  return { bytes, sha256: hash.digest('hex') };
}

async function flushed(path: string): Promise<{ bytes: number; sha256: string }> {
  for (const file of (await filesIn(path)) ?? []) await flush(file);
  const made = await digest(path);
  if (made === null)
    throw new Error(`${path} was to be published and is neither a file nor a folder of files`);
  return made;
}

async function filesIn(path: string): Promise<string[] | null> {
  const seen = await lstat(path);
  if (seen.isFile()) return [path];
  if (!seen.isDirectory()) return null;
  const entries = await readdir(path, { withFileTypes: true });
  if (!entries.every((entry) => entry.isFile())) return null;
  return entries.map((entry) => join(path, entry.name)).sort();
}

async function putAside(out: string, name: string): Promise<string> {
  const ending = extname(name);
  const stem = ending === '' ? name : name.slice(0, -ending.length);
  for (let number = 1; ; number += 1) {
    const aside = `${stem}-other-${number}${ending}`;
    if (await isThere(join(out, aside))) continue;
    await rename(join(out, name), join(out, aside));
    return aside;
  }
}

const isThere = (path: string): Promise<boolean> =>
  lstat(path).then(
    () => true,
    (trouble: NodeJS.ErrnoException) => {
      if (trouble.code === 'ENOENT') return false;
      throw trouble;
    },
  );

async function flush(file: string): Promise<void> {
  const handle = await open(file, 'r+');
  try {
    await handle.sync();
  } finally {
    await handle.close();
  }
}

/** The name itself; some systems know no flushing of folders, and there it is theirs to keep. */
async function flushFolder(folder: string): Promise<void> {
  const handle = await open(folder, 'r').catch(() => null);
  await handle?.sync().catch(() => undefined);
  await handle?.close();
}
