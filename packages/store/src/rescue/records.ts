import type { Pages } from './pages.ts';

/** What a column of a record holds. */
export type Stored = number | string | Uint8Array | null;

export interface StoredRecord {
  rowid: number;
  values: Stored[];
}

const TABLE_LEAF = 13;
const TABLE_INTERIOR = 5;

/** Whether a page says of itself that it holds records of a table. */
export function isTableLeaf(pages: Pages, number: number): boolean {
  return pages.page(number)?.getUint8(headerAt(number)) === TABLE_LEAF;
}

/** The first page of table content begins after the file's header. */
const headerAt = (number: number): number => (number === 1 ? 100 : 0);

/** Leaf pages that are reached from the root page of a table; a page that is not one of a table is passed over. */
export function leavesOf(pages: Pages, root: number): number[] {
  const leaves: number[] = [];
  const seen = new Set<number>();
  const waiting = [root];
  for (let number = waiting.pop(); number !== undefined; number = waiting.pop()) {
    if (seen.has(number) || number < 1 || number > pages.count) continue;
    seen.add(number);
    const page = pages.page(number);
    const at = headerAt(number);
    const kind = page?.getUint8(at);
    if (page && kind === TABLE_LEAF) leaves.push(number);
    if (page && kind === TABLE_INTERIOR) {
      const children = cellPointers(page, at, 12).flatMap((cell) =>
        cell + 4 <= pages.size ? [page.getUint32(cell)] : [],
      );
      waiting.push(page.getUint32(at + 8), ...children.reverse());
    }
  }
  return leaves;
}

/** Pages that SQLite keeps for later use, whose content is of the past; `null`: the list of them is damaged. */
export function freePages(pages: Pages): Set<number> | null {
  const header = pages.page(1);
  if (header === null) return null;
  const free = new Set<number>();
  let trunk = header.getUint32(32);
  while (trunk !== 0) {
    const page = trunk <= pages.count && !free.has(trunk) ? pages.page(trunk) : null;
    const entries = page?.getUint32(4) ?? Number.POSITIVE_INFINITY;
    if (page === null || entries > pages.usable / 4 - 2) return null;
    free.add(trunk);
    for (let entry = 0; entry < entries; entry++) free.add(page.getUint32(8 + 4 * entry));
    trunk = page.getUint32(0);
  }
  return free.size === header.getUint32(36) ? free : null;
}

/** The records of a leaf page that can be read; `unreadable` counts the others. */
export function recordsOf(pages: Pages, number: number): { records: StoredRecord[]; unreadable: number } {
  const page = pages.page(number);
  const records: StoredRecord[] = [];
  let unreadable = 0;
  if (page === null) return { records, unreadable };
  for (const cell of cellPointers(page, headerAt(number), 8)) {
    try {
      records.push(readRecord(pages, page, cell));
    } catch {
      // Whatever does not fit the format: a length beyond the page, a chain that ends early, text that is none.
      unreadable += 1;
    }
  }
  return { records, unreadable };
}

function cellPointers(page: DataView, at: number, header: number): number[] {
  const wanted = page.getUint16(at + 3);
  const fitting = Math.min(wanted, Math.floor((page.byteLength - at - header) / 2));
  return Array.from({ length: fitting }, (_, cell) => page.getUint16(at + header + 2 * cell));
}

function readRecord(pages: Pages, page: DataView, cell: number): StoredRecord {
  const reader = varints(page, cell);
  const length = reader.next();
  const rowid = reader.next();
  return { rowid, values: valuesOf(payload(pages, page, reader.at(), length)) };
}

/** The bytes of a record: on its page, and where they do not fit, on a chain of overflow pages (section 1.6). */
function payload(pages: Pages, page: DataView, at: number, length: number): DataView {
  const { usable } = pages;
  const most = usable - 35;
  const least = Math.floor(((usable - 12) * 32) / 255) - 23;
  const odd = least + ((length - least) % (usable - 4));
  const local = length <= most ? length : odd <= most ? odd : least;
  if (length > pages.count * pages.size) throw new Error('longer than the file');
  const bytes = new Uint8Array(length);
  bytes.set(new Uint8Array(page.buffer, page.byteOffset + at, local));
  let next = local < length ? page.getUint32(at + local) : 0;
  for (let have = local; have < length; ) {
    const overflow = next >= 1 && next <= pages.count ? pages.page(next) : null;
    if (overflow === null) throw new Error('the chain of overflow pages ends early');
    const part = Math.min(usable - 4, length - have);
    bytes.set(new Uint8Array(overflow.buffer, overflow.byteOffset + 4, part), have);
    have += part;
    next = overflow.getUint32(0);
  }
  return new DataView(bytes.buffer);
}

function valuesOf(record: DataView): Stored[] {
  const header = varints(record, 0);
  const headerLength = header.next();
  const kinds: number[] = [];
  while (header.at() < headerLength) kinds.push(header.next());
  let at = headerLength;
  const values = kinds.map((kind) => {
    const length = lengthOf(kind);
    const value = decoded(record, at, kind, length);
    at += length;
    return value;
  });
  if (at !== record.byteLength) throw new Error('a record of another length than its header says');
  return values;
}

const INTEGER_LENGTHS = [0, 1, 2, 3, 4, 6, 8];

function lengthOf(kind: number): number {
  if (kind <= 6) return INTEGER_LENGTHS[kind] as number;
  if (kind === 7) return 8;
  if (kind === 8 || kind === 9) return 0;
  if (kind < 12) throw new Error('a kind of value that there is not');
  return Math.floor((kind - 12) / 2);
}

const strictText = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true });

function decoded(record: DataView, at: number, kind: number, length: number): Stored {
  if (kind === 0) return null;
  if (kind === 8 || kind === 9) return kind - 8;
  if (kind === 7) return record.getFloat64(at);
  if (kind >= 12) {
    const bytes = new Uint8Array(record.buffer, record.byteOffset + at, length);
    return kind % 2 === 0 ? bytes.slice() : strictText.decode(bytes);
  }
  let value = BigInt(record.getInt8(at));
  for (let byte = 1; byte < length; byte++) value = value * 256n + BigInt(record.getUint8(at + byte));
  return Number(value);
}

/** Numbers of one to nine bytes, seven bits each, the ninth with eight. */
function varints(view: DataView, from: number) {
  let at = from;
  return {
    at: () => at,
    next(): number {
      let value = 0;
      for (let byte = 1; byte <= 8; byte++) {
        const read = view.getUint8(at++);
        value = value * 128 + (read & 127);
        if (read < 128) return value;
      }
      value = value * 256 + view.getUint8(at++);
      if (!Number.isSafeInteger(value)) throw new Error('a number beyond what the book writes');
      return value;
    },
  };
}
