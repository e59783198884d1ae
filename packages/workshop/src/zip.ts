import { zipSync } from 'fflate';

/** The earliest day the format knows, so that the same files give the same bytes. */
const FIRST_DAY = '1980-01-01T00:00:00';

/** Files packed into one ZIP archive. Throws above 4 GiB or 65,535 files, which such an archive cannot hold. */
export function zipOf(files: readonly { path: string; bytes: Uint8Array }[]): Uint8Array {
  return zipSync(Object.fromEntries(files.map(({ path, bytes }) => [path, bytes])), { mtime: FIRST_DAY });
}
