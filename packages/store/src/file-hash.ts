import { createHash } from 'node:crypto';
import { createReadStream } from 'node:fs';
import { open, readFile } from 'node:fs/promises';
import { hashOfBytes, originalPath, placePart, writePart } from './originals.ts';

/** SHA-256 of a file, hex, without holding it; other work goes on meanwhile. */
export async function hashOfFile(path: string): Promise<string> {
  const hash = createHash('sha256');
  for await (const piece of createReadStream(path)) hash.update(piece);
  return hash.digest('hex');
}

/** Makes what was written to a file survive a power cut. */
export async function flushFile(path: string): Promise<void> {
  const file = await open(path, 'r+');
  try {
    await file.sync();
  } finally {
    await file.close();
  }
}

/** Whether a folder has the original whole: there, and with the bytes its name says. */
export async function hasOriginal(folder: string, hash: string): Promise<boolean> {
  try {
    return (await hashOfFile(originalPath(folder, hash))) === hash;
  } catch (failure) {
    if (isNotThere(failure)) return false;
    throw failure;
  }
}

/**
 * Copies an original from one folder to another, checked by its hash and flushed; one that is there whole stays.
 * `false`: the first folder does not have it whole, and the other neither.
 */
export async function copyOriginal(from: string, to: string, hash: string): Promise<boolean> {
  if (await hasOriginal(to, hash)) return true;
  let bytes: Uint8Array;
  try {
    bytes = await readFile(originalPath(from, hash));
  } catch (failure) {
    if (isNotThere(failure)) return false;
    throw failure;
  }
  if (hashOfBytes(bytes) !== hash) return false;
  await placePart(to, hash, await writePart(to, hash, bytes));
  return true;
}

/** Gone, or on a place of the disk that can no longer be read. */
function isNotThere(failure: unknown): boolean {
  return ['ENOENT', 'ENOTDIR', 'EISDIR', 'EIO'].includes((failure as NodeJS.ErrnoException).code ?? '');
}
