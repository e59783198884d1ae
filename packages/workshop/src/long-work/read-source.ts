import { createHash } from 'node:crypto';
import { constants } from 'node:fs';
import { type FileHandle, open } from 'node:fs/promises';
import type { JobContext } from '@pullbook/compute';
import { type Result, refused, remark } from '@pullbook/core/remark';
import { type FileReading, TextTableReader } from '@pullbook/formats';

/** Where the bytes of a file are: in memory, or on the disk, from where they are read piece by piece. */
export type FileSource = { bytes: Uint8Array; path?: never } | { path: string; bytes?: never };

/** A file with the name a person knows it by. */
export type NamedSource = FileSource & { name: string };

export interface SourceRead {
  reading: Result<FileReading>;
  /** SHA-256 of all its bytes, hex: the name of an original file. `null`: refused before its end was reached. */
  hash: string | null;
  byteLength: number;
}

/** A pipe that nobody writes into would be waited for without end; not every system knows the flag. */
const READ_WITHOUT_WAITING = constants.O_RDONLY | (constants.O_NONBLOCK ?? 0);

const PIECE_BYTES = 1_048_576;

/** Reads a file and takes its hash on the way. What is refused is read on for the hash alone: the book may know it. */
export async function readSource(source: NamedSource, { progress }: JobContext): Promise<SourceRead> {
  if (source.bytes) return readBytes(source.name, source.bytes);
  const file = await open(source.path, READ_WITHOUT_WAITING);
  try {
    return await readOpen(source.name, file, progress);
  } finally {
    await file.close();
  }
}

function readBytes(name: string, bytes: Uint8Array): SourceRead {
  const reader = new TextTableReader(name, bytes.length);
  reader.feed(bytes);
  const hash = createHash('sha256').update(bytes).digest('hex');
  return { reading: reader.finish(), hash, byteLength: bytes.length };
}

async function readOpen(
  name: string,
  file: FileHandle,
  progress: JobContext['progress'],
): Promise<SourceRead> {
  const before = await file.stat();
  if (!before.isFile() && !before.isDirectory())
    return { reading: refused(notAFile(name)), hash: null, byteLength: 0 };
  const reader = new TextTableReader(name, before.size);
  if (!reader.feed(new Uint8Array(0)))
    return { reading: reader.finish(), hash: null, byteLength: before.size };
  const hash = createHash('sha256');
  const piece = new Uint8Array(PIECE_BYTES);
  let byteLength = 0;
  let wanted = true;
  for (;;) {
    const { bytesRead } = await file.read(piece, 0, PIECE_BYTES);
    if (bytesRead === 0) break;
    const part = piece.subarray(0, bytesRead);
    hash.update(part);
    if (wanted) wanted = reader.feed(part);
    byteLength += bytesRead;
    progress(before.size === 0 ? 1 : Math.min(1, byteLength / before.size));
  }
  const after = await file.stat();
  const same = after.size === byteLength && after.size === before.size && after.mtimeMs === before.mtimeMs;
  if (!same) return { reading: refused(changedWhileRead(name)), hash: null, byteLength };
  return { reading: reader.finish(), hash: hash.digest('hex'), byteLength };
}

/** It is read twice, once for its figures and once to keep its bytes; a folder fails by itself, with the system's word. */
const notAFile = (name: string) =>
  remark(
    'refusal',
    'not-a-file',
    `${name} is a pipe or a device, not a file, and its bytes could not be kept. Save what it gives into a file, then add that.`,
  );

/** Some other program was writing the file. */
export const changedWhileRead = (name: string) =>
  remark(
    'refusal',
    'file-changed',
    `${name} changed while it was read, as a log does that is still being written. Nothing was stored. Wait until it is finished, then add it again.`,
    { line: 1 },
  );
