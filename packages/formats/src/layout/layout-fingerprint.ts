import type { FileReading } from '../model.ts';
import { columnKeys } from './column-keys.ts';

/**
 * What files of one kind have in common, as 16 hex digits: the names and units of their columns in their order. Rows, lines
 * before the header, encoding, delimiter and decimal mark do not count. `null` without a header: widths and ranges are
 * too weak to know a kind of file by.
 */
export function layoutFingerprint(reading: Pick<FileReading, 'layout' | 'columns'>): string | null {
  if (reading.layout.headerLine === null) return null;
  return hash64(columnKeys(reading.columns).join('\n'));
}

const PRIME = 0x100000001b3n;
const START = 0xcbf29ce484222325n;

/** FNV-1a of 64 bits over the text's UTF-8 bytes (constants of the algorithm's public description, from memory). */
function hash64(text: string): string {
  let hash = START;
  for (const byte of new TextEncoder().encode(text)) hash = BigInt.asUintN(64, (hash ^ BigInt(byte)) * PRIME);
  return hash.toString(16).padStart(16, '0');
}
