import { Zip, ZipDeflate } from 'fflate';

/** The earliest day the format knows, so that the same files give the same bytes. */
const FIRST_DAY = '1980-01-01T00:00:00';
/** What an archive without the 64-bit extension can hold. */
export const ZIP_LIMITS = { files: 65_535, bytes: 2 ** 32 - 1 } as const;

export interface FileToPack {
  path: string;
  bytes: Uint8Array;
}

/**
 * The bytes of one ZIP archive of the files, in pieces as the files come: only one file is held at a time. Throws beyond
 * `ZIP_LIMITS`; ask before.
 */
export async function* zipOf(
  files: Iterable<FileToPack> | AsyncIterable<FileToPack>,
): AsyncGenerator<Uint8Array> {
  let ready: Uint8Array[] = [];
  let count = 0;
  let length = 0;
  const archive = new Zip((fault, piece) => {
    if (fault) throw fault;
    length += piece.length;
    ready.push(piece);
  });
  for await (const { path, bytes } of files) {
    const entry = new ZipDeflate(path, { level: 6 });
    entry.mtime = FIRST_DAY;
    archive.add(entry);
    entry.push(bytes, true);
    count += 1;
    if (count > ZIP_LIMITS.files || length > ZIP_LIMITS.bytes)
      throw new Error('more than a ZIP archive can hold');
    const pieces = ready;
    ready = [];
    yield* pieces;
  }
  archive.end();
  yield* ready;
}
