import { existsSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { resolve, sep } from 'node:path';
import { accepted, type Remark, type Result, refused, remark } from '@pullbook/core/remark';
import { type OpenExport, openExport, type ReadExportFile } from '@pullbook/formats';
import { backupIn, restoreBackup, restoreContents } from '@pullbook/store';
import { inNewFolder, isTaken } from './in-new-folder.ts';

export interface RestoreReport {
  folder: string;
  /** What it was made of. */
  from: 'export' | 'backup';
  /** ISO 8601, of a backup: when it was made. */
  madeAt: string | null;
  pulls: number;
  trials: number;
  combinations: number;
  /** Originals that the backup does not have whole; the curves of their pulls are there. */
  missingOriginals: { hash: string; name: string }[];
}

/**
 * Makes a new book of an open export or of a backup, whichever the folder holds. The new folder must not hold anything
 * yet. `at`: which backup of those in the folder (the beginning of its time); the newest where it is not given.
 */
export async function restoreBook(
  from: string,
  newFolder: string,
  at: string | null = null,
): Promise<Result<RestoreReport>> {
  const wanted = resolve(newFolder);
  if (await isTaken(wanted)) {
    const message = `${wanted} is not empty. A book is only restored into a new folder, so that nothing is overwritten: name another.`;
    return refused(remark('refusal', 'folder-not-empty', message));
  }
  const source = resolve(from);
  if (await backupIn(source)) return restoreFromBackup(source, wanted, at);
  if (existsSync(source)) return restoreFromExport(source, wanted);
  const message = `There is no folder ${source} that can be read. Name the folder of an export or of backups.`;
  return refused(remark('refusal', 'no-export', message));
}

async function restoreFromBackup(
  source: string,
  wanted: string,
  at: string | null,
): Promise<Result<RestoreReport>> {
  let report: RestoreReport | null = null;
  await inNewFolder(wanted, async (temporary) => {
    const { book, madeAt, missing } = await restoreBackup(source, temporary, at);
    try {
      const { pulls, trials, combinations } = await book.outline();
      report = {
        folder: wanted,
        from: 'backup',
        madeAt,
        ...counts({ pulls, trials, combinations }),
        missingOriginals: missing,
      };
    } finally {
      await book.close();
    }
  });
  if (report === null) throw new Error('a restored book without a report');
  return accepted(report);
}

async function restoreFromExport(source: string, wanted: string): Promise<Result<RestoreReport>> {
  const opened = await openExport(readerOf(source));
  if (!opened.ok) return opened;
  const { contents } = opened.value;
  try {
    await inNewFolder(wanted, async (temporary) => {
      const book = await restoreContents(temporary, contents, {
        channelsOf: async ({ id }) => wholeOrFault(await opened.value.channelsOf(id)),
        originalOf: async ({ hash }) => wholeOrFault(await opened.value.originalOf(hash)),
      });
      await book.close();
    });
  } catch (trouble) {
    if (!(trouble instanceof ExportFault)) throw trouble;
    return refusedWithAll(opened.value, trouble);
  }
  return accepted(
    { folder: wanted, from: 'export', madeAt: null, ...counts(contents), missingOriginals: [] },
    opened.remarks,
  );
}

/** Says everything that is wrong with an export, not only what was met first. */
async function refusedWithAll(opened: OpenExport, met: ExportFault): Promise<Result<never>> {
  const [first = met.remarks[0], ...others] = await opened.faults();
  if (first === undefined) throw met;
  return refused(first, ...others);
}

/** A file of the export is missing or does not fit. */
export class ExportFault extends Error {
  readonly remarks: Remark[];
  constructor(remarks: Remark[]) {
    super(remarks[0]?.message);
    this.remarks = remarks;
  }
}

export function wholeOrFault<T>(result: Result<T>): T {
  if (result.ok) return result.value;
  throw new ExportFault(result.remarks);
}

const readerOf =
  (folder: string): ReadExportFile =>
  async (path) => {
    const full = resolve(folder, path);
    // A path of a foreign book.json must not lead out of its folder.
    if (!full.startsWith(`${folder}${sep}`)) return null;
    return readFile(full).catch((trouble: NodeJS.ErrnoException) => {
      if (trouble.code === 'ENOENT' || trouble.code === 'ENOTDIR' || trouble.code === 'EISDIR') return null;
      throw trouble;
    });
  };

const counts = (all: { pulls: unknown[]; trials: unknown[]; combinations: unknown[] }) => ({
  pulls: all.pulls.length,
  trials: all.trials.length,
  combinations: all.combinations.length,
});
