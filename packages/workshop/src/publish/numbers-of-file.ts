import { readFile } from 'node:fs/promises';
import { basename } from 'node:path';
import { accepted, type Result, refused } from '@pullbook/core/remark';
import type { PublishedNumbers } from '../edge/published-numbers.ts';
import type { CardNumbers } from '../enquiry/enquiry-report.ts';
import { refuse } from '../refuse.ts';
import { diskRemark } from './disk-words.ts';

/** What a published file says, read back from it alone. */
export interface NumbersOfFile {
  /** `svg`, `png`, `pdf` or `html`. */
  kind: string;
  numbers: PublishedNumbers | CardNumbers;
  /** Every word and figure drawn in it, in its order. */
  texts: string[];
}

/** Reads a still, report or answer card back: the figures that were laid into it, and what is drawn. Needs no book. */
export async function numbersOfFile(path: string): Promise<Result<NumbersOfFile>> {
  let bytes: Uint8Array;
  try {
    bytes = await readFile(path);
  } catch (trouble) {
    const { code } = trouble as NodeJS.ErrnoException;
    if (code === 'ENOENT') return refuse('no-file', `There is no file ${path}. Check the path.`);
    if (code === 'EISDIR') return refuse('a-folder', `${path} is a folder. Name one file in it.`);
    return refused(diskRemark(trouble, path));
  }
  const { readPublished } = await import('@pullbook/publish');
  const read = await readPublished(bytes);
  if (!read.ok) return read;
  const { kind, numbers, texts } = read.value;
  if (!isOurs(numbers))
    return refuse(
      'no-numbers',
      `${basename(path)} carries no numbers of Pullbook's: it was made by another program, or saved anew by one that left them out. Publish it again.`,
    );
  return accepted({ kind, numbers, texts });
}

function isOurs(numbers: unknown): numbers is PublishedNumbers | CardNumbers {
  if (typeof numbers !== 'object' || numbers === null) return false;
  const { schemaVersion, combinations, comparisons, rungs } = numbers as Partial<
    PublishedNumbers & CardNumbers
  >;
  const isOfTrial = Array.isArray(combinations) && Array.isArray(comparisons);
  return schemaVersion === 1 && (isOfTrial || Array.isArray(rungs));
}
