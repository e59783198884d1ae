import { accepted, type Result } from '@pullbook/core/remark';
import type { Book } from '@pullbook/store';
import type { ViewOptions } from '@pullbook/views';
import { fileReport, type ReadFileReport } from './edge/file-report.ts';
import { kindRemarks, knownKind } from './layouts.ts';
import { longWork } from './long-work/long-work.ts';
import type { NamedSource } from './long-work/read-source.ts';
import { takenBack, wouldBeInAgain } from './taken-back.ts';

/**
 * Reads a file as far as it goes and guesses what its columns mean, for a person to confirm. Stores nothing. With a
 * book, says whether it already has these bytes, and takes what was confirmed of this kind of file before.
 */
export async function readFileForImport(
  book: Book | null,
  file: NamedSource,
  options: ViewOptions,
): Promise<Result<ReadFileReport>> {
  const { reading, hash } = await longWork.run('readFile', file);
  if (!reading.ok) return reading;
  if (hash === null) throw new Error('a file was accepted without its hash');
  const known = book ? await book.pullIdsOfFile(hash) : [];
  const kind = book ? await knownKind(book, reading.value) : null;
  // A known kind stands in the report by itself.
  const isTaken = kind !== null && kind.conflicts.length === 0;
  const again = book ? await takenBack(book, hash) : null;
  const remarks = [
    ...(again ? [wouldBeInAgain(again)] : []),
    ...(isTaken ? [] : kindRemarks(reading.value, kind)),
    ...reading.value.remarks,
    ...(isTaken ? [] : reading.value.questions),
  ];
  return accepted(fileReport(reading.value, { hash, known, kind, remarks, options }), remarks);
}
