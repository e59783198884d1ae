import { accepted, type Result, refused, remark } from '@pullbook/core/remark';
import { svgSize, svgTrouble } from './mark-svg.ts';

/** The shop's own sign, as data: it goes where the book goes. None is shipped. */
export interface ShopMark {
  mediaType: 'image/svg+xml' | 'image/png';
  /** Pixels, or units of an SVG: only their ratio matters. */
  width: number;
  height: number;
  byteLength: number;
  base64: string;
}

const MOST_BYTES = 300_000;
const PNG_SIGNATURE = [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a];
/** A sign longer or taller than this leaves no room for words beside it. */
const LONGEST_RATIO = 10;

/**
 * A mark from the bytes of a PNG or SVG file. An SVG that could act or ask somebody is refused by the name of the part
 * that could; nothing is taken out silently.
 *
 * @example markFromBytes(await readFile('sign.svg'))
 */
export function markFromBytes(bytes: Uint8Array): Result<ShopMark> {
  if (bytes.byteLength > MOST_BYTES) {
    const size = `${Math.ceil(bytes.byteLength / 1000)} kB`;
    return markRefusal(`is ${size}. Allowed: ${MOST_BYTES / 1000} kB. Save it smaller or simpler.`);
  }
  const isPng = PNG_SIGNATURE.every((byte, index) => bytes[index] === byte);
  const read = isPng ? pngSize(bytes) : svgFrom(bytes);
  if (!read.ok) return read;
  const { width, height } = read.value;
  if (Math.max(width / height, height / width) > LONGEST_RATIO) {
    return markRefusal(`is ${width} by ${height}. Allowed: at most ${LONGEST_RATIO} times as long as wide.`);
  }
  return accepted({
    mediaType: isPng ? 'image/png' : 'image/svg+xml',
    width,
    height,
    byteLength: bytes.byteLength,
    base64: Buffer.from(bytes).toString('base64'),
  });
}

/** A mark that was kept, or sent as JSON, looked at again: only its data is believed. */
export function storedMark(given: unknown): Result<ShopMark> {
  const base64 =
    typeof given === 'object' && given !== null ? (given as Partial<ShopMark>).base64 : undefined;
  if (typeof base64 !== 'string' || !/^[A-Za-z0-9+/\s]+={0,2}\s*$/.test(base64))
    return markRefusal('has no data. Give the file itself, PNG or SVG.');
  return markFromBytes(new Uint8Array(Buffer.from(base64, 'base64')));
}

/** Whether a thing has the shape of a kept mark. */
export const isMark = (given: unknown): given is ShopMark =>
  typeof given === 'object' &&
  given !== null &&
  ['image/svg+xml', 'image/png'].includes((given as ShopMark).mediaType) &&
  typeof (given as ShopMark).base64 === 'string' &&
  (given as ShopMark).width > 0 &&
  (given as ShopMark).height > 0;

/** The address of a mark that holds its own data, for a drawing. */
export const markAddress = ({ mediaType, base64 }: ShopMark): string => `data:${mediaType};base64,${base64}`;

function pngSize(bytes: Uint8Array): Result<{ width: number; height: number }> {
  if (bytes.byteLength < 33) return markRefusal('is a PNG that is cut off. Save it again.');
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  // Width and height stand at bytes 16 and 20, in the first chunk (PNG, third edition, 11.2.1).
  const [width, height] = [view.getUint32(16), view.getUint32(20)];
  return width > 0 && height > 0
    ? accepted({ width, height })
    : markRefusal('is a PNG without width or height. Save it again.');
}

function svgFrom(bytes: Uint8Array): Result<{ width: number; height: number }> {
  let text: string;
  try {
    text = new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return markRefusal('is neither PNG nor SVG. Save it as one of the two.');
  }
  if (!/<svg[\s>]/.test(text)) return markRefusal('is neither PNG nor SVG. Save it as one of the two.');
  const trouble = svgTrouble(text);
  if (trouble !== null)
    return markRefusal(
      `holds ${trouble}. Allowed: shapes, text and colours that stand in the file itself. Save it as a plain SVG or as PNG.`,
    );
  const size = svgSize(text);
  return size === null
    ? markRefusal('is an SVG without a size. Give it a viewBox, or width and height.')
    : accepted(size);
}

const markRefusal = (what: string): Result<never> => refused(remark('refusal', 'mark', `The mark ${what}`));
