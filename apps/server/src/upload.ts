import type { FastifyRequest } from 'fastify';
import { RequestTrouble } from './trouble.ts';

export interface Upload {
  name: string;
  bytes: Uint8Array;
  /** Field `details`, parsed; `{}` where none was sent. */
  details: unknown;
}

/** The one file of an upload with its details, in whatever order they come. */
export async function uploadFrom(request: FastifyRequest): Promise<Upload> {
  if (!request.isMultipart()) {
    throw new RequestTrouble(
      415,
      'no-upload',
      'A file must be sent as multipart/form-data, in a field "file".',
    );
  }
  let file: { name: string; bytes: Uint8Array } | null = null;
  let details = '{}';
  for await (const part of request.parts()) {
    if (part.type === 'file') file = { name: nameOnly(part.filename), bytes: await part.toBuffer() };
    else if (part.fieldname === 'details') details = String(part.value);
  }
  if (!file)
    throw new RequestTrouble(400, 'no-file', 'There is no file in the upload: send one in a field "file".');
  return { ...file, details: parsed(details) };
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
