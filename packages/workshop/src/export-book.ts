import { existsSync } from 'node:fs';
import { mkdir, rename, rm, writeFile } from 'node:fs/promises';
import { dirname, join, resolve } from 'node:path';
import { accepted, type Result, refused, remark } from '@pullbook/core/remark';
import { writeBookFiles } from '@pullbook/formats';
import type { Book } from '@pullbook/store';
import { inNewFolder, isTaken } from './in-new-folder.ts';

export interface ExportReport {
  folder: string;
  files: number;
  pulls: number;
}

/** All files of the open export: JSON, CSV with its metadata, original bytes. */
export async function exportFiles(book: Book): Promise<{ path: string; bytes: Uint8Array }[]> {
  const contents = await book.contents();
  const originals = new Map<string, { name: string; bytes: Uint8Array }>();
  for (const file of contents.files) {
    originals.set(file.hash, { name: file.name, bytes: await book.original(file.hash) });
  }
  return writeBookFiles(contents, originals);
}

/**
 * Writes the whole book as open files into a new folder. A folder that already holds something is refused; with
 * `replace` an earlier export (and nothing else) gives way to the new one once that is whole.
 */
export async function exportBook(
  book: Book,
  folder: string,
  options: { replace?: boolean | undefined } = {},
): Promise<Result<ExportReport>> {
  const wanted = resolve(folder);
  const taken = await isTaken(wanted);
  if (taken && !(options.replace && existsSync(join(wanted, 'book.json')))) {
    const advice = options.replace
      ? 'It is not an earlier export (no book.json in it), so it is not replaced. Name another folder.'
      : 'Nothing was written. Name a new folder, or ask for an earlier export to be replaced (--replace).';
    return refused(remark('refusal', 'folder-not-empty', `The folder ${wanted} is not empty. ${advice}`));
  }
  const files = await exportFiles(book);
  const earlier = `${wanted}.earlier-${process.pid}`;
  await inNewFolder(wanted, async (temporary) => {
    for (const { path, bytes } of files) {
      const target = join(temporary, path);
      await mkdir(dirname(target), { recursive: true });
      await writeFile(target, bytes, { flush: true });
    }
    if (taken) await rename(wanted, earlier);
  });
  await rm(earlier, { recursive: true, force: true });
  return accepted({ folder: wanted, files: files.length, pulls: (await book.pullHeads()).length });
}
