import { closeSync, existsSync, fstatSync, openSync, readFileSync, readSync } from 'node:fs';

/**
 * Pages of an SQLite file that SQLite itself may no longer be willing to open: read by number, with the committed frames
 * of the journal beside it on top. Layout of both files: "Database File Format" of the SQLite project (sections 1.3, 1.5,
 * 1.6 and 4), from memory; held in the tests against files that SQLite wrote.
 */
export interface Pages {
  /** Bytes a page; the file's own statement, or SQLite's usual one where that is gone. */
  size: number;
  /** Bytes of a page that hold content. */
  usable: number;
  /** Number of pages; the first is 1. */
  count: number;
  /** Number of pages by the file's header; `null`: it does not say. */
  stated: number | null;
  /** `null`: not there whole. */
  page: (number: number) => DataView | null;
  close: () => void;
}

const USUAL_PAGE_SIZE = 4096;
const MAGIC = 'SQLite format 3\0';
const FRAME_HEADER = 24;
const WAL_HEADER = 32;

export function openPages(file: string, journal: string): Pages {
  const handle = existsSync(file) ? openSync(file, 'r') : null;
  const length = handle === null ? 0 : fstatSync(handle).size;
  const read = (at: number, count: number): DataView | null => {
    const bytes = new Uint8Array(count);
    if (handle === null || at + count > length) return null;
    try {
      return readSync(handle, bytes, 0, count, at) === count ? new DataView(bytes.buffer) : null;
    } catch {
      // A place of the disk that can no longer be read.
      return null;
    }
  };
  const header = read(0, 100);
  const size = sizeStated(header) ?? journalPageSize(journal) ?? USUAL_PAGE_SIZE;
  const { frames, count: inJournal } = committedFrames(journal, size);
  const reserved = header !== null && sizeStated(header) !== null ? header.getUint8(20) : 0;
  return {
    size,
    usable: size - (reserved < 64 ? reserved : 0),
    count: Math.max(Math.floor(length / size), inJournal),
    stated: header !== null && sizeStated(header) !== null ? (frames.get(1) ?? header).getUint32(28) : null,
    page: (number) => frames.get(number) ?? read((number - 1) * size, size),
    close: () => {
      if (handle !== null) closeSync(handle);
    },
  };
}

function sizeStated(header: DataView | null): number | null {
  if (header === null) return null;
  for (let at = 0; at < MAGIC.length; at++) if (header.getUint8(at) !== MAGIC.charCodeAt(at)) return null;
  return plausibleSize(header.getUint16(16) === 1 ? 65_536 : header.getUint16(16));
}

const plausibleSize = (size: number): number | null =>
  size >= 512 && size <= 65_536 && (size & (size - 1)) === 0 ? size : null;

function journalPageSize(journal: string): number | null {
  const bytes = bytesOf(journal);
  return bytes.byteLength < WAL_HEADER ? null : plausibleSize(bytes.getUint32(8));
}

/** The newest committed state of each page in the journal, as far as its checksums hold. */
function committedFrames(journal: string, size: number): { frames: Map<number, DataView>; count: number } {
  const frames = new Map<number, DataView>();
  const bytes = bytesOf(journal);
  let count = 0;
  if (bytes.byteLength < WAL_HEADER || bytes.getUint32(8) !== size) return { frames, count };
  const magic = bytes.getUint32(0);
  if (magic !== 0x377f0682 && magic !== 0x377f0683) return { frames, count };
  const sum = runningChecksum(bytes, magic === 0x377f0682);
  sum.add(0, 24);
  if (!sum.is(24)) return { frames, count };
  let pending = new Map<number, DataView>();
  for (let at = WAL_HEADER; at + FRAME_HEADER + size <= bytes.byteLength; at += FRAME_HEADER + size) {
    if (bytes.getUint32(at + 8) !== bytes.getUint32(16) || bytes.getUint32(at + 12) !== bytes.getUint32(20))
      break;
    sum.add(at, 8);
    sum.add(at + FRAME_HEADER, size);
    if (!sum.is(at + 16)) break;
    pending.set(bytes.getUint32(at), new DataView(bytes.buffer, bytes.byteOffset + at + FRAME_HEADER, size));
    const pagesAfterCommit = bytes.getUint32(at + 4);
    if (pagesAfterCommit === 0) continue;
    for (const [number, page] of pending) frames.set(number, page);
    pending = new Map();
    count = pagesAfterCommit;
  }
  return { frames, count };
}

function bytesOf(journal: string): DataView {
  try {
    const bytes = readFileSync(journal);
    return new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  } catch {
    return new DataView(new ArrayBuffer(0));
  }
}

/** The two sums of section 4.2 over words of 32 bits. */
function runningChecksum(bytes: DataView, littleEndian: boolean) {
  let first = 0;
  let second = 0;
  return {
    add(at: number, length: number) {
      for (let word = at; word < at + length; word += 8) {
        first = (first + bytes.getUint32(word, littleEndian) + second) >>> 0;
        second = (second + bytes.getUint32(word + 4, littleEndian) + first) >>> 0;
      }
    },
    is: (at: number): boolean => bytes.getUint32(at) === first && bytes.getUint32(at + 4) === second,
  };
}
