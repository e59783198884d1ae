import { accepted, type Result, refused, remark } from '@pullbook/core/remark';
import type { TextLayout } from '../model.ts';
import { foreignFile, foreignText } from './foreign-file.ts';

const LOOKED_AT_BYTES = 4000;

/** How the bytes of a file are text. */
export interface TextStart {
  encoding: TextLayout['encoding'];
  /** Length of the byte order mark, 0 without one. */
  markBytes: number;
}

/**
 * The encoding of a file by its first bytes.
 *
 * A byte order mark decides. Without one: UTF-16 where nearly every other byte is 0, UTF-8 where the bytes are valid
 * UTF-8, else windows-1252 (which holds Latin-1's letters). Refused: an empty file, one that is no text.
 *
 * @example startOfText(new TextEncoder().encode('rpm;Nm\n'), true, 'a.csv') // { encoding: 'utf-8', markBytes: 0 }
 */
export function startOfText(head: Uint8Array, isWhole: boolean, name: string): Result<TextStart> {
  if (head.length === 0) {
    return refused(remark('refusal', 'empty-file', `${name} is empty (0 bytes). Export the run again.`));
  }
  const foreign = foreignFile(head) ?? foreignText(head);
  if (foreign) {
    const message = `${name} is ${foreign.what}, not a table of text. ${foreign.advice}`;
    return refused(remark('refusal', 'not-text', message, { line: 1 }));
  }
  const written = withoutTrailingZeros(head);
  if (written.subarray(markLength(written)).every(isBlankOrZero)) {
    const message = `${name} holds only blank lines or zero bytes. Export the run again.`;
    return refused(remark('refusal', 'empty-file', message, { line: 1 }));
  }
  const start = wideStart(head) ?? narrowStart(written, isWhole);
  const looked = new TextDecoder(decoderLabel(start.encoding)).decode(
    written.subarray(0, LOOKED_AT_BYTES),
    // A character may be cut in two there.
    { stream: true },
  );
  if (looksBinary(looked)) {
    const message = `${name} is not text: it holds bytes that no delimited text has. Export the run as CSV (comma, semicolon or tab).`;
    return refused(remark('refusal', 'not-text', message, { line: 1 }));
  }
  return accepted(start);
}

const decoderLabel = (encoding: TextLayout['encoding']): string =>
  encoding === 'utf-8 with BOM' ? 'utf-8' : encoding;

/** Turns the bytes of a UTF-16 file into UTF-8, chunk by chunk; others are left as they are. */
export function toNarrowBytes(encoding: TextLayout['encoding']): (chunk: Uint8Array) => Uint8Array {
  if (encoding !== 'utf-16le' && encoding !== 'utf-16be') return (chunk) => chunk;
  const decoder = new TextDecoder(encoding, { ignoreBOM: true });
  const encoder = new TextEncoder();
  return (chunk) => encoder.encode(decoder.decode(chunk, { stream: true }));
}

function wideStart(head: Uint8Array): TextStart | null {
  if (head[0] === 0xff && head[1] === 0xfe) return { encoding: 'utf-16le', markBytes: 2 };
  if (head[0] === 0xfe && head[1] === 0xff) return { encoding: 'utf-16be', markBytes: 2 };
  const length = Math.min(head.length, LOOKED_AT_BYTES) & ~1;
  if (length < 4) return null;
  let evenZeros = 0;
  let oddZeros = 0;
  for (let position = 0; position < length; position += 2) {
    if (head[position] === 0) evenZeros += 1;
    if (head[position + 1] === 0) oddZeros += 1;
  }
  const pairs = length / 2;
  if (oddZeros > 0.9 * pairs && evenZeros === 0) return { encoding: 'utf-16le', markBytes: 0 };
  if (evenZeros > 0.9 * pairs && oddZeros === 0) return { encoding: 'utf-16be', markBytes: 0 };
  return null;
}

function narrowStart(head: Uint8Array, isWhole: boolean): TextStart {
  const markBytes = markLength(head);
  try {
    new TextDecoder('utf-8', { fatal: true }).decode(head, { stream: !isWhole });
  } catch {
    return { encoding: 'windows-1252', markBytes: 0 };
  }
  return { encoding: markBytes > 0 ? 'utf-8 with BOM' : 'utf-8', markBytes };
}

/** Length of UTF-8's byte order mark, 0 without one. */
const markLength = (head: Uint8Array): number =>
  head[0] === 0xef && head[1] === 0xbb && head[2] === 0xbf ? 3 : 0;

/** The bytes up to the last that is not 0. */
export function withoutTrailingZeros(bytes: Uint8Array): Uint8Array {
  let end = bytes.length;
  while (end > 0 && bytes[end - 1] === 0) end -= 1;
  return bytes.subarray(0, end);
}

const isBlankOrZero = (byte: number): boolean => byte === 0 || byte === 32 || (byte >= 9 && byte <= 13);

/**
 * Control characters other than tab, line feed, carriage return and form feed make up more than 1 in 50. Zeros do not count:
 * a log that lost its power holds stretches of them, and what is no text holds other ones too.
 */
function looksBinary(looked: string): boolean {
  let controls = 0;
  for (let position = 0; position < looked.length; position++) {
    const code = looked.charCodeAt(position);
    if (code > 0 && code < 32 && code !== 9 && code !== 10 && code !== 12 && code !== 13) controls += 1;
    else if ((code >= 0x7f && code <= 0x9f) || code === 0xfffd) controls += 1;
  }
  return controls > looked.length / 50;
}
