import { rm } from 'node:fs/promises';
import type { OriginalFile } from '@pullbook/core/pull';
import type { Connection, Rows } from './connection.ts';
import { hashOfBytes, type OriginalBytes, placePart, writePart } from './originals.ts';
import { writing } from './transaction.ts';
import { asBookTrouble } from './trouble.ts';

/**
 * Brings original bytes and their rows into the book together: the bytes are written and flushed beside their place, then
 * under the lock the rows go in, the bytes are renamed and the folder flushed, and the commit comes last. Killed anywhere,
 * there is either all of it or nothing but a part that the next start sweeps up.
 */
export async function addOriginal(
  connection: Connection,
  file: OriginalFile,
  original: OriginalBytes,
  insertRows: (rows: Rows) => Promise<void>,
): Promise<void> {
  if (original instanceof Uint8Array) {
    if (hashOfBytes(original) !== file.hash)
      throw new Error(`the bytes of "${file.name}" do not have the hash ${file.hash}`);
    if (original.length !== file.byteLength)
      throw new Error(`"${file.name}" is not ${file.byteLength} bytes long`);
  }
  const { folder } = connection;
  let part = '';
  let placed = false;
  try {
    part = await writePart(folder, file.hash, original);
    await writing(connection, async (rows) => {
      await insertRows(rows);
      await placePart(folder, file.hash, part);
      placed = true;
    });
  } catch (failure) {
    // Bytes whose commit failed are left to the sweep of the next start: whether a failed commit is on the disk is not known.
    if (part !== '' && !placed) await rm(part, { force: true });
    throw asBookTrouble(failure, folder);
  }
}
