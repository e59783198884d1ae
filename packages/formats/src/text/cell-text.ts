const UTF_8 = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true });
const WINDOWS_1252 = new TextDecoder('windows-1252');
/** `String.fromCharCode` takes its characters as arguments, and a call holds so many. */
const MOST_ARGUMENTS = 4096;

/**
 * Turns stretches of a file's bytes into text. Bytes that are not UTF-8 in a file that was taken for it are read as
 * windows-1252, stretch by stretch, so that one bad byte spoils no other line.
 */
export class CellText {
  /** Stretches that were no UTF-8. */
  odd = 0;
  private readonly encoding: 'utf-8' | 'windows-1252';

  constructor(encoding: 'utf-8' | 'windows-1252') {
    this.encoding = encoding;
  }

  /** Text of the bytes from `from` to before `to`. */
  of(bytes: Uint8Array, from: number, to: number): string {
    if (to - from <= MOST_ARGUMENTS && isAscii(bytes, from, to))
      return String.fromCharCode.apply(null, bytes.subarray(from, to) as unknown as number[]);
    const part = bytes.subarray(from, to);
    if (this.encoding === 'utf-8') {
      try {
        return UTF_8.decode(part);
      } catch {
        this.odd += 1;
      }
    }
    return WINDOWS_1252.decode(part);
  }
}

function isAscii(bytes: Uint8Array, from: number, to: number): boolean {
  for (let at = from; at < to; at++) if ((bytes[at] as number) > 127) return false;
  return true;
}
