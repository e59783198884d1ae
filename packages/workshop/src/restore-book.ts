import { readdir, readFile } from 'node:fs/promises';
import { join, relative, resolve, sep } from 'node:path';
import { accepted, type Result, refused, remark } from '@pullbook/core/remark';
import { readBookFiles } from '@pullbook/formats';
import { restoreContents } from '@pullbook/store';
import { inNewFolder, isTaken } from './in-new-folder.ts';

export interface RestoreReport {
  folder: string;
  pulls: number;
  trials: number;
  combinations: number;
}

/** Makes a new book of an open export. The new folder must not hold anything yet. */
export async function restoreBook(exported: string, newFolder: string): Promise<Result<RestoreReport>> {
  const wanted = resolve(newFolder);
  if (await isTaken(wanted)) {
    return refused(
      remark(
        'refusal',
        'folder-not-empty',
        `${wanted} is not empty. A book is only restored into a new folder, so that nothing is overwritten: name another.`,
      ),
    );
  }
  const files = await filesUnder(resolve(exported));
  if (!files.ok) return files;
  const read = readBookFiles(files.value);
  if (!read.ok) return read;
  const { contents, originals } = read.value;
  await inNewFolder(wanted, async (temporary) => {
    const book = await restoreContents(temporary, contents, (file) => bytesOf(file, originals));
    await book.close();
  });
  const { pulls, trials, combinations } = contents;
  return accepted(
    { folder: wanted, pulls: pulls.length, trials: trials.length, combinations: combinations.length },
    read.remarks,
  );
}

function bytesOf(
  file: { hash: string; name: string },
  originals: Map<string, { bytes: Uint8Array }>,
): Uint8Array {
  const original = originals.get(file.hash);
  if (!original) throw new Error(`The export has no original bytes of ${file.name} (${file.hash}).`);
  return original.bytes;
}

async function filesUnder(folder: string): Promise<Result<{ path: string; bytes: Uint8Array }[]>> {
  const entries = await readdir(folder, { recursive: true, withFileTypes: true }).catch(() => null);
  if (!entries) {
    return refused(
      remark(
        'refusal',
        'no-export',
        `${folder} is not a folder that can be read. Name the folder of an export.`,
      ),
    );
  }
  const files: { path: string; bytes: Uint8Array }[] = [];
  for (const entry of entries.filter((one) => one.isFile())) {
    const path = join(entry.parentPath, entry.name);
    files.push({ path: relative(folder, path).split(sep).join('/'), bytes: await readFile(path) });
  }
  return accepted(files);
}
