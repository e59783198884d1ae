import { randomUUID } from 'node:crypto';
import { createWriteStream } from 'node:fs';
import { mkdir, readdir, rm, stat } from 'node:fs/promises';
import { join } from 'node:path';
import { pipeline } from 'node:stream/promises';
import type { MultipartFile } from '@fastify/multipart';
import type { FastifyRequest } from 'fastify';
import { RequestTrouble } from './trouble.ts';

export interface Upload {
  name: string;
  /** Where its bytes are while the request is answered. */
  path: string;
  /** Field `details`, parsed; `{}` where none was sent. */
  details: unknown;
}

/** A file that came in and that nobody has written to for so long has lost its request, ms. */
const LOST_AFTER_MS = 3_600_000;

/** Folder beside the book's files for what comes in, swept of what a program that was killed left there. */
export async function incomingFolder(bookFolder: string): Promise<string> {
  const folder = join(bookFolder, 'incoming');
  for (const name of await readdir(folder).catch(() => [])) {
    const path = join(folder, name);
    const { mtimeMs } = await stat(path);
    if (Date.now() - mtimeMs > LOST_AFTER_MS) await rm(path, { force: true });
  }
  return folder;
}

/**
 * Does `work` with the one file of an upload and its details, in whatever order they come. The file goes to the disk as it
 * comes and never stands in memory; after the work it is removed.
 */
export async function withUpload<T>(
  request: FastifyRequest,
  folder: string,
  work: (upload: Upload) => Promise<T>,
): Promise<T> {
  if (!request.isMultipart()) {
    throw new RequestTrouble(
      415,
      'no-upload',
      'A file must be sent as multipart/form-data, in a field "file".',
    );
  }
  await mkdir(folder, { recursive: true }).catch((trouble: unknown) => {
    throw diskTrouble(trouble);
  });
  const path = join(folder, randomUUID());
  try {
    return await work(await received(request, path));
  } finally {
    await rm(path, { force: true });
  }
}

async function received(request: FastifyRequest, path: string): Promise<Upload> {
  let name: string | null = null;
  let details = '{}';
  for await (const part of request.parts()) {
    if (part.type === 'file') {
      await keep(part, path, request);
      name = nameOnly(part.filename);
    } else if (part.fieldname === 'details') details = String(part.value);
  }
  if (name === null)
    throw new RequestTrouble(400, 'no-file', 'There is no file in the upload: send one in a field "file".');
  return { name, path, details: parsed(details) };
}

async function keep(part: MultipartFile, path: string, request: FastifyRequest): Promise<void> {
  await pipeline(part.file, createWriteStream(path, { flags: 'wx' })).catch((trouble: unknown) => {
    throw diskTrouble(trouble);
  });
  if (part.file.truncated) throw new request.server.multipartErrors.RequestFileTooLargeError();
}

/** Trouble of the disk that a person can mend, in words; anything else as it is. */
function diskTrouble(trouble: unknown): unknown {
  const code = (trouble as NodeJS.ErrnoException).code ?? '';
  if (code === 'ENOSPC' || code === 'EDQUOT') {
    const message =
      'There is no room on the disk for the file that comes in. Make room, then add it again; what is in the book is untouched.';
    return new RequestTrouble(507, 'full', message);
  }
  if (code === 'EROFS' || code === 'EACCES' || code === 'EPERM') {
    const message =
      'The folder of the book cannot be written to, so no file can come in. Make it writable, or open a copy of the book.';
    return new RequestTrouble(409, 'read-only', message);
  }
  return trouble;
}

function parsed(details: string): unknown {
  try {
    return JSON.parse(details);
  } catch {
    throw new RequestTrouble(400, 'wrong-shape', 'The field "details" is not JSON.');
  }
}

/** A browser may send a path with the name; only its last part is kept. */
const nameOnly = (name: string | undefined): string => name?.split(/[\\/]/).pop()?.trim() || 'file';
