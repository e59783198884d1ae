import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { deflate } from 'node:zlib';
import { frameName } from '@pullbook/charts';
import { chunk } from '../numbers/png-numbers.ts';

const deflated = promisify(deflate);
const SIGNATURE = Uint8Array.of(0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a);
/** Drawings are large even faces: more effort takes three times as long and saves little. */
const EFFORT = 3;

/**
 * Pixels as a PNG (PNG specification, third edition): 8 bits a channel, rows as they are, sRGB. With alpha straight, or
 * without it.
 */
export async function pngOf(
  pixels: Uint8Array,
  { width, height, ground }: { width: number; height: number; ground: boolean },
): Promise<Uint8Array> {
  const channels = ground ? 3 : 4;
  const rows = new Uint8Array(height * (1 + channels * width));
  let to = 0;
  for (let y = 0; y < height; y += 1) {
    to += 1;
    const from = 4 * y * width;
    if (channels === 4) {
      rows.set(pixels.subarray(from, from + 4 * width), to);
      to += 4 * width;
    } else {
      for (let at = from; at < from + 4 * width; at += 4) {
        rows[to++] = pixels[at]!;
        rows[to++] = pixels[at + 1]!;
        rows[to++] = pixels[at + 2]!;
      }
    }
  }
  const header = Buffer.alloc(13);
  header.writeUInt32BE(width, 0);
  header.writeUInt32BE(height, 4);
  header.set([8, ground ? 2 : 6, 0, 0, 0], 8);
  return Buffer.concat([
    SIGNATURE,
    chunk('IHDR', header),
    chunk('sRGB', Uint8Array.of(0)),
    chunk('IDAT', await deflated(rows, { level: EFFORT })),
    chunk('IEND', new Uint8Array(0)),
  ]);
}

/** Writes one numbered picture into a folder. */
export const writeFrame = (folder: string, index: number, png: Uint8Array): Promise<void> =>
  writeFile(join(folder, frameName(index)), png);
