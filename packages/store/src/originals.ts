import { createHash, randomUUID } from 'node:crypto';
import { existsSync } from 'node:fs';
import { type FileHandle, mkdir, open, readdir, readFile, rename, rm, stat } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import type { Connection } from './connection.ts';
import { BookTrouble } from './model.ts';
import { originalsFolder } from './places.ts';
import { readFiles } from './rows/files.ts';
import { writing } from './transaction.ts';
import { asBookTrouble, damagedMessage } from './trouble.ts';

const HASH = /^[0-9a-f]{64}$/;
/** Ending of a file that is still being written. */
const PART = '.part';
/** A part that nobody has written to for this long has lost its writer, ms. */
const PART_IS_LOST_AFTER_MS = 60_000;
const PIECE_BYTES = 1_048_576;
/** Where originals go that no row of the book knows. */
const SET_ASIDE = 'set-aside';

/** SHA-256 of the bytes, hex. */
export function hashOfBytes(bytes: Uint8Array): string {
  return createHash('sha256').update(bytes).digest('hex');
}

/** `originals/ab/<hash>`, the hash beginning with `ab`. */
export function originalPath(folder: string, hash: string): string {
  if (!HASH.test(hash)) throw new Error(`"${hash}" is not a SHA-256 in hex`);
  return join(originalsFolder(folder), hash.slice(0, 2), hash);
}

/** The bytes of an original: in memory, or in a file from where they are copied piece by piece. */
export type OriginalBytes = Uint8Array | { path: string };

/** The bytes are not those that were read before: somebody wrote to the file meanwhile. */
export class OriginalChanged extends Error {}

/**
 * Writes and flushes the bytes beside their final place; gives the path of the part.
 *
 * @throws {OriginalChanged} where a file no longer holds the bytes of that hash
 */
export async function writePart(folder: string, hash: string, original: OriginalBytes): Promise<string> {
  const shelf = dirname(originalPath(folder, hash));
  const made = await mkdir(shelf, { recursive: true });
  if (made !== undefined) await flushFolder(dirname(shelf));
  const part = join(shelf, `${hash}.${randomUUID()}${PART}`);
  try {
    const file = await open(part, 'wx');
    try {
      if (original instanceof Uint8Array) await file.writeFile(original);
      else await copyInto(file, original.path, hash);
      await file.sync();
    } finally {
      await file.close();
    }
  } catch (failure) {
    await rm(part, { force: true });
    throw failure;
  }
  return part;
}

async function copyInto(file: FileHandle, path: string, hash: string): Promise<void> {
  const found = createHash('sha256');
  const source = await open(path, 'r');
  try {
    const piece = new Uint8Array(PIECE_BYTES);
    for (;;) {
      const { bytesRead } = await source.read(piece, 0, PIECE_BYTES);
      if (bytesRead === 0) break;
      found.update(piece.subarray(0, bytesRead));
      await file.writeFile(piece.subarray(0, bytesRead));
    }
  } finally {
    await source.close();
  }
  if (found.digest('hex') !== hash) throw new OriginalChanged(`${path} is no longer what was read`);
}

/**
 * Moves a written part to its final place and flushes the folder. Only inside a writing transaction: the sweep of another
 * program holds the same lock, so it never sees an original whose row is about to come.
 */
export async function placePart(folder: string, hash: string, part: string): Promise<void> {
  const final = originalPath(folder, hash);
  await rename(part, final);
  await flushFolder(dirname(final));
}

/** The original bytes; throws `BookTrouble` when they are gone or are no longer those that were stored. */
export async function readOriginal(folder: string, hash: string): Promise<Uint8Array> {
  const path = originalPath(folder, hash);
  let bytes: Uint8Array;
  try {
    bytes = await readFile(path);
  } catch (failure) {
    if ((failure as NodeJS.ErrnoException).code !== 'ENOENT') throw asBookTrouble(failure, folder);
    throw new BookTrouble('damaged', damagedMessage(folder, `the original ${path} is not there`));
  }
  if (hashOfBytes(bytes) === hash) return bytes;
  throw new BookTrouble('damaged', damagedMessage(folder, `the original ${path} is not what was stored`));
}

/**
 * Tidies after a writer that was killed. Lost parts are removed. An original that no row knows is moved to
 * `originals/set-aside` and never deleted: it may be measured data whose database was put back to an older copy, and a
 * writer killed inside its commit leaves rows that nobody sees until all programs have closed the book, and that are there
 * when the next one opens it. So an original whose row has come is put back.
 */
export async function sweepOriginals(connection: Connection): Promise<void> {
  const root = originalsFolder(connection.folder);
  const aside = join(root, SET_ASIDE);
  await writing(connection, async (rows) => {
    const known = new Set((await readFiles(rows)).map(({ hash }) => hash));
    for (const hash of await namesIn(aside)) {
      if (known.has(hash)) await putBack(join(aside, hash), originalPath(connection.folder, hash));
    }
    for (const shelf of await namesIn(root)) {
      if (!/^[0-9a-f]{2}$/.test(shelf)) continue;
      for (const name of await namesIn(join(root, shelf))) {
        const path = join(root, shelf, name);
        if (name.endsWith(PART) && (await isLost(path))) await rm(path, { force: true });
        if (HASH.test(name) && !known.has(name)) {
          await mkdir(aside, { recursive: true });
          await rename(path, join(aside, name));
        }
      }
    }
  });
}

/** To its shelf; where it came in again meanwhile, the copy aside is one too many. */
async function putBack(from: string, to: string): Promise<void> {
  if (existsSync(to)) {
    await rm(from);
  } else {
    await mkdir(dirname(to), { recursive: true });
    await rename(from, to);
    await flushFolder(dirname(to));
  }
}

async function isLost(path: string): Promise<boolean> {
  const { mtimeMs } = await stat(path);
  return Date.now() - mtimeMs > PART_IS_LOST_AFTER_MS;
}

async function namesIn(folder: string): Promise<string[]> {
  try {
    return (await readdir(folder)).sort();
  } catch (failure) {
    if ((failure as NodeJS.ErrnoException).code === 'ENOENT') return [];
    throw failure;
  }
}

/** Makes a new name in a folder survive a power cut. Windows has no such call and needs none. */
export async function flushFolder(folder: string): Promise<void> {
  if (process.platform === 'win32') return;
  const handle = await open(folder, 'r');
  try {
    await handle.sync();
  } finally {
    await handle.close();
  }
}
