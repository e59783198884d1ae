import { randomUUID } from 'node:crypto';
import { readFile, rm, stat } from 'node:fs/promises';
import { join } from 'node:path';
import { accepted, type Remark, type Result, refused, remark } from '@pullbook/core/remark';
import type { Trial } from '@pullbook/core/trial';
import { type OpenExport, openExport } from '@pullbook/formats';
import { type Book, BookTrouble, type MergeReport, restoreContents } from '@pullbook/store';
import { mergeIntoBook } from './merge-books.ts';
import { ExportFault, wholeOrFault } from './restore-book.ts';
import { showWhole } from './shown-whole.ts';
import { ZIP_LIMITS } from './zip.ts';
import { openZip, type ZipReader } from './zip-reader.ts';

export interface OpenedBundle {
  trialId: string;
  question: string;
  /** How many pulls the trial has. */
  pulls: number;
  /** The trial was not in this book before. */
  isNew: boolean;
  report: MergeReport;
}

/** The same from a file. */
export async function openBundleFile(book: Book, path: string): Promise<Result<OpenedBundle>> {
  const bytes = await bundleBytes(path);
  return bytes.ok ? openBundle(book, bytes.value) : bytes;
}

/** The bytes of a bundle's file; refused where there is none or it is too large for one. */
export async function bundleBytes(path: string): Promise<Result<Uint8Array>> {
  const found = await stat(path).catch(() => null);
  if (!found?.isFile()) {
    const message = `There is no file ${path} that can be read. Name the ZIP file of a trial.`;
    return refused(remark('refusal', 'no-bundle', message));
  }
  if (found.size > ZIP_LIMITS.bytes) {
    const message = `${path} is larger than a ZIP archive of a trial can be (4 GiB). Name the ZIP file of a trial.`;
    return refused(remark('refusal', 'zip-too-large', message));
  }
  return accepted(await readFile(path));
}

/**
 * Takes a trial that another book bundled into this one, with everything it rests on: a book is made of it aside, whole or
 * not at all, and merged in. Pulls that are here already, by their ids or from the same bytes, are not doubled; opening it
 * once more changes nothing. What is damaged is refused by name, and nothing is written.
 */
export async function openBundle(book: Book, bytes: Uint8Array): Promise<Result<OpenedBundle>> {
  const opened = await bundledTrial(bytes);
  if (!opened.ok) return opened;
  const { trial, content } = opened.value;
  const isNew = (await book.trial(trial.id)) === null;
  // Under the name of a merge's own copies, which the next merge sweeps up should this one be killed.
  const aside = join(book.folder, `merge-${process.pid}-${randomUUID()}.part`);
  try {
    const trouble = await restoredAside(aside, trial.id, content);
    if (trouble !== null) return refused(...trouble);
    const merged = await mergeIntoBook(book, aside, { dryRun: false });
    if (!merged.ok) return merged;
    const { id: trialId, question, pulls } = trial;
    return accepted({ trialId, question, pulls: pulls.length, isNew, report: merged.value }, [
      ...opened.remarks,
      ...merged.remarks,
    ]);
  } finally {
    await rm(aside, { recursive: true, force: true });
  }
}

/** The one trial of a bundle, and all that the bundle holds; another archive is refused, saying what it is. */
export async function bundledTrial(
  bytes: Uint8Array,
): Promise<Result<{ trial: Trial; content: OpenExport }>> {
  const archive = openZip(bytes);
  if (!archive.ok) return archive;
  const opened = await contentOf(archive.value);
  if (!opened.ok) return opened;
  const [trial, ...others] = opened.value.contents.trials;
  // A bundle has none; what a foreign file has of them nobody would look at before it stands in the book.
  const contents = { ...opened.value.contents, enquiries: [] };
  if (trial && others.length === 0)
    return accepted({ trial, content: { ...opened.value, contents } }, opened.remarks);
  const message = `The archive holds ${others.length === 0 ? 'no trial' : `${others.length + 1} trials`}: it is no bundle of one trial. Unpack it, make a book of it ("pullbook restore FOLDER --book NEW") and merge that ("pullbook merge NEW").`;
  return refused(remark('refusal', 'no-bundle', message));
}

/** A book of the bundle's content, whose trial can be worked out and shown; what is wrong with the content is told. */
async function restoredAside(
  folder: string,
  trialId: string,
  { contents, channelsOf, originalOf }: OpenExport,
): Promise<[Remark, ...Remark[]] | null> {
  try {
    const made = await restoreContents(folder, contents, {
      channelsOf: async ({ id }) => wholeOrFault(await channelsOf(id)),
      originalOf: async ({ hash }) => wholeOrFault(await originalOf(hash)),
    });
    try {
      await showWhole(made, trialId);
    } finally {
      await made.close();
    }
    return null;
  } catch (trouble) {
    return faultsOf(trouble);
  }
}

/** What a failure says of the bundle; one that is the book's own goes on: a full disk and its like. */
function faultsOf(trouble: unknown): [Remark, ...Remark[]] {
  if (trouble instanceof BookTrouble) throw trouble;
  if (trouble instanceof ExportFault) return trouble.remarks as [Remark, ...Remark[]];
  // Whatever a foreign book.json can have wrong: names of things that it lacks, fields of another kind.
  const said = trouble instanceof Error ? trouble.message : String(trouble);
  const message = `The content of the archive does not hold together (${said}). Nothing was taken in. Get it again from where it came.`;
  return [remark('refusal', 'export-damaged', message)];
}

async function contentOf(archive: ZipReader): Promise<Result<OpenExport>> {
  try {
    return await openExport(async (path) => fileIn(archive, path));
  } catch (trouble) {
    return refused(...faultsOf(trouble));
  }
}

/** A file of the bundle, also where the whole was packed once more inside a folder. */
function fileIn({ paths, read }: ZipReader, path: string): Uint8Array | null {
  const [folder = ''] = paths
    .filter((one) => /^[^/]+\/book\.json$/.test(one))
    .map((one) => one.split('/')[0]);
  const bytes = read(path) ?? read(`${folder}/${path}`);
  return bytes === null ? null : wholeOrFault(bytes);
}
