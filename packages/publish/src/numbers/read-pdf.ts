import { inflateSync } from 'node:zlib';
import { NUMBERS_FILE } from './names.ts';

interface PdfObject {
  /** The object's dictionary as written. */
  head: string;
  /** Its stream, unpacked; `null`: it has none. */
  stream: Buffer | null;
}

/** The objects of a PDF as we write it: none packed into streams of objects, each stream deflated or plain, with its length. */
function objectsOf(bytes: Uint8Array): Map<number, PdfObject> {
  const file = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const whole = file.toString('latin1');
  const objects = new Map<number, PdfObject>();
  const starts = /(\d+) 0 obj\n/gu;
  for (let match = starts.exec(whole); match !== null; match = starts.exec(whole)) {
    const from = match.index + match[0].length;
    const length = /\/Length (\d+)/u;
    const endOfHead = whole.indexOf('\nendobj', from);
    const streamAt = whole.indexOf('\nstream\n', from);
    if (streamAt < 0 || (endOfHead >= 0 && endOfHead < streamAt)) {
      objects.set(Number(match[1]), { head: whole.slice(from, endOfHead), stream: null });
      continue;
    }
    const head = whole.slice(from, streamAt);
    const bytesLong = Number(length.exec(head)?.[1] ?? 0);
    const start = streamAt + '\nstream\n'.length;
    const raw = file.subarray(start, start + bytesLong);
    objects.set(Number(match[1]), { head, stream: head.includes('/FlateDecode') ? inflateSync(raw) : raw });
    starts.lastIndex = start + bytesLong;
  }
  return objects;
}

/** The attached JSON; `null`: none. */
export function pdfNumbers(bytes: Uint8Array): string | null {
  const objects = objectsOf(bytes);
  for (const { head } of objects.values()) {
    if (!head.includes('/Type /Filespec') || !head.includes(`(${NUMBERS_FILE})`)) continue;
    const place = /\/F (\d+) 0 R/u.exec(head)?.[1];
    const stream = objects.get(Number(place))?.stream ?? null;
    if (stream !== null) return stream.toString('utf8');
  }
  return null;
}

/** Every line of text on the pages, page by page in the order of drawing. */
export function pdfTexts(bytes: Uint8Array): string[] {
  const objects = objectsOf(bytes);
  const pages = [...objects.values()].filter(({ head }) => /\/Type \/Page\b/u.test(head));
  return pages.flatMap(({ head }) => {
    const content = objects.get(Number(/\/Contents (\d+) 0 R/u.exec(head)?.[1]))?.stream ?? null;
    if (content === null) return [];
    const resources = objects.get(Number(/\/Resources (\d+) 0 R/u.exec(head)?.[1]))?.head ?? head;
    const fonts = new Map(
      [...resources.matchAll(/\/(F\d+) (\d+) 0 R/gu)].map(([, name, place]) => [
        name!,
        signsOf(objects, Number(place)),
      ]),
    );
    return textsOf(content.toString('latin1'), fonts);
  });
}

/** By the number of a glyph, what it stands for: the font's `ToUnicode` table. */
function signsOf(objects: ReadonlyMap<number, PdfObject>, font: number): Map<string, string> {
  const table = /\/ToUnicode (\d+) 0 R/u.exec(objects.get(font)?.head ?? '')?.[1];
  const text = objects.get(Number(table))?.stream?.toString('latin1') ?? '';
  const signs = new Map<string, string>();
  for (const [, first, list] of text.matchAll(/<([0-9a-f]+)> <[0-9a-f]+> \[([^\]]*)\]/gu)) {
    for (const [place, [, hex]] of [...list!.matchAll(/<([^>]*)>/gu)].entries()) {
      const glyph = (Number.parseInt(first!, 16) + place).toString(16).padStart(4, '0');
      const units = (hex!.match(/[0-9a-f]{4}/gu) ?? []).map((unit) => Number.parseInt(unit, 16));
      signs.set(glyph, String.fromCharCode(...units));
    }
  }
  return signs;
}

/** One text for each `BT … ET`. */
function textsOf(content: string, fonts: ReadonlyMap<string, ReadonlyMap<string, string>>): string[] {
  return [...content.matchAll(/BT\n([\s\S]*?)\nET/gu)].map(([, block]) => {
    const signs = fonts.get(/\/(F\d+) /u.exec(block!)?.[1] ?? '');
    return [...block!.matchAll(/<([0-9a-f]+)>/gu)]
      .flatMap(([, hex]) => hex!.match(/.{4}/gu) ?? [])
      .map((glyph) => signs?.get(glyph) ?? '\u{fffd}')
      .join('');
  });
}
