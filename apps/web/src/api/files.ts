import type { ImportDetails, ImportReport, ReadFileReport } from './edge.ts';
import { apiAddress, troubleFrom, UNREACHABLE } from './request.ts';

/** Reads a file without keeping anything of it. */
export function readFile(file: File): Promise<ReadFileReport> {
  return upload('/files/read', file, null, () => {});
}

/** Adds a file with its pulls to the book. `progress` gets the share sent, 0 to 1. */
export function importFile(
  file: File,
  details: ImportDetails,
  progress: (share: number) => void,
): Promise<ImportReport> {
  return upload('/files/import', file, details, progress);
}

/** What the rules say of a file as it would go in; nothing is kept. */
export const checkFile = (file: File, details: ImportDetails): Promise<ImportReport> =>
  upload('/files/check', file, details, () => {});

/** Sends a file with what is said beside it; `null`: nothing. */
export function upload<T>(
  path: string,
  file: File,
  details: object | null,
  progress: (share: number) => void,
): Promise<T> {
  const form = new FormData();
  // Before the file: a reader of the stream then knows what to do with it.
  if (details !== null) form.append('details', JSON.stringify(details));
  form.append('file', file, file.name);
  return new Promise((resolve, reject) => {
    // fetch tells nothing of how much was sent; this does.
    const request = new XMLHttpRequest();
    request.open('POST', apiAddress(path));
    request.upload.onprogress = (event) => {
      if (event.lengthComputable) progress(event.loaded / event.total);
    };
    request.onerror = () => reject(UNREACHABLE);
    request.onload = () => {
      if (request.status < 300) resolve(JSON.parse(request.responseText) as T);
      else reject(troubleFrom(request.status, request.responseText));
    };
    request.send(form);
  });
}
