import { crc32 } from 'node:zlib';

const SIGNATURE_BYTES = 8;
/** Length, type and checksum beside the data of a chunk. */
const BESIDE = 12;

/** A PNG with texts laid behind its header as iTXt chunks (PNG specification, third edition, 11.3.3.4): UTF-8, not packed. */
export function withPngTexts(png: Uint8Array, texts: Readonly<Record<string, string>>): Uint8Array {
  const header = Buffer.from(png.buffer, png.byteOffset).readUInt32BE(SIGNATURE_BYTES);
  const afterHeader = SIGNATURE_BYTES + BESIDE + header;
  const chunks = Object.entries(texts).map(([keyword, text]) =>
    chunk('iTXt', Buffer.from(`${keyword}\0\0\0\0\0${text.replaceAll('\0', ' ')}`, 'utf8')),
  );
  return new Uint8Array(Buffer.concat([png.subarray(0, afterHeader), ...chunks, png.subarray(afterHeader)]));
}

/** The text under a keyword of a PNG's iTXt chunks as written above; `null`: there is none. */
export function pngText(png: Uint8Array, wanted: string): string | null {
  const file = Buffer.from(png.buffer, png.byteOffset, png.byteLength);
  for (let at = SIGNATURE_BYTES; at + BESIDE <= file.length; ) {
    const length = file.readUInt32BE(at);
    const data = file.subarray(at + 8, at + 8 + length);
    if (file.toString('latin1', at + 4, at + 8) === 'iTXt') {
      const keywordEnd = data.indexOf(0);
      const isPacked = data[keywordEnd + 1] !== 0;
      const languageEnd = data.indexOf(0, keywordEnd + 3);
      const translatedEnd = data.indexOf(0, languageEnd + 1);
      if (!isPacked && data.toString('latin1', 0, keywordEnd) === wanted)
        return data.toString('utf8', translatedEnd + 1);
    }
    at += BESIDE + length;
  }
  return null;
}

/** A chunk with its length before and its checksum behind it. */
export function chunk(type: string, data: Uint8Array): Buffer {
  const typed = Buffer.concat([Buffer.from(type, 'latin1'), data]);
  const whole = Buffer.alloc(typed.length + 8);
  whole.writeUInt32BE(data.length, 0);
  typed.copy(whole, 4);
  whole.writeUInt32BE(crc32(typed), typed.length + 4);
  return whole;
}
