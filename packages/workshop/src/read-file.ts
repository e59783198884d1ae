import { createHash } from 'node:crypto';
import { accepted, type Result } from '@pullbook/core/remark';
import { readTextFile } from '@pullbook/formats';
import type { Book } from '@pullbook/store';
import { fileReport, type ReadFileReport } from './edge/file-report.ts';

/** SHA-256 of bytes, hex: the name of an original file. */
export function hashOf(bytes: Uint8Array): string {
  return createHash('sha256').update(bytes).digest('hex');
}

/**
 * Reads a file as far as it goes and guesses what its columns mean, for a person to confirm. Stores nothing. With a
 * book, says whether it already has these bytes.
 */
export async function readFileForImport(
  book: Book | null,
  bytes: Uint8Array,
  name: string,
): Promise<Result<ReadFileReport>> {
  const reading = readTextFile(bytes, name);
  if (!reading.ok) return reading;
  const hash = hashOf(bytes);
  const known = book ? await book.pullIdsOfFile(hash) : [];
  return accepted(fileReport(reading.value, hash, known), reading.remarks);
}
