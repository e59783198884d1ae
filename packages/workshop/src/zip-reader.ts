import { crc32, inflateRawSync } from 'node:zlib';
import { accepted, type Result, refused, remark } from '@pullbook/core/remark';
import { ZIP_LIMITS } from './zip.ts';

/** An archive that was looked into; what is in it is unpacked as it is asked for. */
export interface ZipReader {
  paths: readonly string[];
  /** `null`: it is not there. */
  read: (path: string) => Result<Uint8Array> | null;
}

/** Most bytes that the files of one archive may have together, unpacked: some dozens of pulls with their originals have less. */
export const MOST_UNPACKED = 2 ** 30;

interface Entry {
  path: string;
  flags: number;
  method: number;
  crc: number;
  packed: number;
  unpacked: number;
  offset: number;
}

/**
 * Looks into a ZIP archive (APPNOTE 6.3, from memory: end of central directory, its entries, local headers; stored and
 * deflated files, no 64-bit extension). Refused before anything is unpacked: what is none, is cut off, or would unpack to
 * more than is allowed. Each file is held to the length and the checksum that the archive states.
 */
export function openZip(bytes: Uint8Array): Result<ZipReader> {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const entries = entriesOf(view);
  if (entries === null) return refused(damaged('It is no ZIP archive, or its end is missing.'));
  const unpacked = entries.reduce((sum, one) => sum + one.unpacked, 0);
  if (entries.length > ZIP_LIMITS.files || unpacked > MOST_UNPACKED) {
    const message = `The archive would unpack to ${entries.length} files of ${Math.ceil(unpacked / 1e6)} MB together; allowed are ${ZIP_LIMITS.files} files and ${Math.floor(MOST_UNPACKED / 1e6)} MB. Nothing was unpacked. Restore a book from a folder instead, then merge it.`;
    return refused(remark('refusal', 'zip-too-large', message));
  }
  const byPath = new Map(entries.map((one) => [one.path, one]));
  if (byPath.size < entries.length) return refused(damaged('It holds a file twice.'));
  return accepted({
    paths: [...byPath.keys()],
    read: (path) => {
      const entry = byPath.get(path);
      return entry ? unpack(view, bytes, entry) : null;
    },
  });
}

const damaged = (what: string) =>
  remark('refusal', 'zip-damaged', `The archive cannot be read. ${what} Get it again from where it came.`);

const END = 0x06054b50;
const CENTRAL = 0x02014b50;
const LOCAL = 0x04034b50;
const END_LENGTH = 22;
const CENTRAL_LENGTH = 46;
const LOCAL_LENGTH = 30;
const LONGEST_COMMENT = 0xffff;

function entriesOf(view: DataView): Entry[] | null {
  const end = endOf(view);
  if (end === null) return null;
  const count = view.getUint16(end + 10, true);
  const entries: Entry[] = [];
  let at = view.getUint32(end + 16, true);
  for (let index = 0; index < count; index++) {
    if (at + CENTRAL_LENGTH > end || view.getUint32(at, true) !== CENTRAL) return null;
    const [name, extra, comment] = [28, 30, 32].map((field) => view.getUint16(at + field, true));
    if (at + CENTRAL_LENGTH + name! > end) return null;
    const path = new TextDecoder().decode(
      new Uint8Array(view.buffer, view.byteOffset + at + CENTRAL_LENGTH, name!),
    );
    const entry = {
      path,
      flags: view.getUint16(at + 8, true),
      method: view.getUint16(at + 10, true),
      crc: view.getUint32(at + 16, true),
      packed: view.getUint32(at + 20, true),
      unpacked: view.getUint32(at + 24, true),
      offset: view.getUint32(at + 42, true),
    };
    // A folder's own line holds nothing.
    if (!path.endsWith('/')) entries.push(entry);
    at += CENTRAL_LENGTH + name! + extra! + comment!;
  }
  return entries;
}

function endOf(view: DataView): number | null {
  const last = view.byteLength - END_LENGTH;
  for (let at = last; at >= Math.max(0, last - LONGEST_COMMENT); at--)
    if (view.getUint32(at, true) === END) return at;
  return null;
}

const ENCRYPTED = 1;
const STORED = 0;
const DEFLATED = 8;

function unpack(view: DataView, bytes: Uint8Array, entry: Entry): Result<Uint8Array> {
  const { path, flags, method, crc, packed, unpacked, offset } = entry;
  const fault = (what: string) => refused(damaged(`“${path}” in it ${what}.`));
  if ((flags & ENCRYPTED) !== 0 || (method !== STORED && method !== DEFLATED))
    return fault('is encrypted, or packed in a way that is not known here');
  if (offset + LOCAL_LENGTH > bytes.length || view.getUint32(offset, true) !== LOCAL)
    return fault('is not where the archive says');
  const from = offset + LOCAL_LENGTH + view.getUint16(offset + 26, true) + view.getUint16(offset + 28, true);
  const content = bytes.subarray(from, from + packed);
  const whole = method === STORED ? content : inflated(content, unpacked);
  if (whole?.length !== unpacked || crc32(whole) !== crc) return fault('is damaged');
  return accepted(whole);
}

/** `null`: it is not whole, or longer than the archive said. */
function inflated(content: Uint8Array, length: number): Uint8Array | null {
  try {
    const buffer = inflateRawSync(content, { maxOutputLength: Math.max(1, length) });
    return new Uint8Array(buffer.buffer, buffer.byteOffset, buffer.length);
  } catch {
    return null;
  }
}
