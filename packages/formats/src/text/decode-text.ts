import { accepted, type Remark, type Result, refused, remark } from '@pullbook/core/remark';
import type { TextLayout } from '../model.ts';
import { foreignFile } from './foreign-file.ts';

/** Larger than any log of a pull; a JavaScript string ends near 512 MB. */
const LARGEST_FILE_BYTES = 200e6;
const LOOKED_AT_BYTES = 4000;

export interface DecodedText {
  encoding: TextLayout['encoding'];
  /** Without byte order mark; line ends are `\n`. */
  text: string;
}

/**
 * Text of a file, with the encoding it was found to have.
 *
 * A byte order mark decides. Without one: UTF-16 where nearly every other byte is 0, UTF-8 where the bytes are valid
 * UTF-8, else windows-1252 (which holds Latin-1's letters). Refused: an empty file, one that is no text, one too large.
 *
 * @example decodeText(new TextEncoder().encode('rpm;Nm\n')) // { encoding: 'utf-8', text: 'rpm;Nm\n' }
 */
export function decodeText(bytes: Uint8Array, name: string): Result<DecodedText> {
  if (bytes.length === 0) {
    return refused(remark('refusal', 'empty-file', `${name} is empty (0 bytes). Export the run again.`));
  }
  if (bytes.length > LARGEST_FILE_BYTES) {
    const size = Math.round(bytes.length / 1e6);
    const message = `${name} has ${size} MB; at most ${LARGEST_FILE_BYTES / 1e6} MB are read. Cut the log to the pulls.`;
    return refused(remark('refusal', 'file-too-large', message));
  }
  const foreign = foreignFile(bytes);
  if (foreign) {
    return refused(remark('refusal', 'not-text', `${name} is ${foreign.what}, not text. ${foreign.advice}`));
  }
  const remarks: Remark[] = [];
  const encoding = wideEncoding(bytes);
  let found: DecodedText | null = null;
  if (encoding) {
    found = {
      encoding,
      text: new TextDecoder(encoding === 'utf-16le' ? 'utf-16le' : 'utf-16be').decode(bytes),
    };
  } else {
    const whole = withoutTrailingZeros(bytes);
    if (whole.length < bytes.length && whole.length > 0) {
      const message = `${name} ends in ${bytes.length - whole.length} zero bytes, as a log does that was cut off; they are left out.`;
      remarks.push(remark('note', 'trailing-zero-bytes', message));
    }
    if (!whole.includes(0)) found = narrowText(whole);
  }
  if (!found || looksBinary(found.text)) {
    const message = `${name} is not text: it holds bytes that no delimited text has. Export the run as CSV (comma, semicolon or tab).`;
    return refused(remark('refusal', 'not-text', message));
  }
  const text = found.text.replace(/^\uFEFF/, '').replace(/\r\n?/g, '\n');
  if (text.trim() === '') {
    return refused(remark('refusal', 'empty-file', `${name} holds only blank lines. Export the run again.`));
  }
  return accepted({ encoding: found.encoding, text }, remarks);
}

function wideEncoding(bytes: Uint8Array): 'utf-16le' | 'utf-16be' | null {
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return 'utf-16le';
  if (bytes[0] === 0xfe && bytes[1] === 0xff) return 'utf-16be';
  const length = Math.min(bytes.length, LOOKED_AT_BYTES) & ~1;
  if (length < 4) return null;
  let evenZeros = 0;
  let oddZeros = 0;
  for (let position = 0; position < length; position += 2) {
    if (bytes[position] === 0) evenZeros += 1;
    if (bytes[position + 1] === 0) oddZeros += 1;
  }
  const pairs = length / 2;
  if (oddZeros > 0.9 * pairs && evenZeros === 0) return 'utf-16le';
  if (evenZeros > 0.9 * pairs && oddZeros === 0) return 'utf-16be';
  return null;
}

function narrowText(bytes: Uint8Array): DecodedText {
  const marked = bytes[0] === 0xef && bytes[1] === 0xbb && bytes[2] === 0xbf;
  try {
    const text = new TextDecoder('utf-8', { fatal: true }).decode(bytes);
    return { encoding: marked ? 'utf-8 with BOM' : 'utf-8', text };
  } catch {
    return { encoding: 'windows-1252', text: new TextDecoder('windows-1252').decode(bytes) };
  }
}

function withoutTrailingZeros(bytes: Uint8Array): Uint8Array {
  let end = bytes.length;
  while (end > 0 && bytes[end - 1] === 0) end -= 1;
  return bytes.subarray(0, end);
}

/** Control characters other than tab, line feed, carriage return and form feed make up more than 1 in 50. */
function looksBinary(text: string): boolean {
  const looked = text.slice(0, LOOKED_AT_BYTES);
  let controls = 0;
  for (let position = 0; position < looked.length; position++) {
    const code = looked.charCodeAt(position);
    if (code < 32 && code !== 9 && code !== 10 && code !== 12 && code !== 13) controls += 1;
    else if ((code >= 0x7f && code <= 0x9f) || code === 0xfffd) controls += 1;
  }
  return controls > looked.length / 50;
}
