import { inflateSync } from 'node:zlib';

export interface Pixels {
  width: number;
  height: number;
  /** Red, green, blue, alpha of each pixel. */
  rgba: Uint8Array;
}

/** The pixels of a PNG of 8 bits a channel with alpha and no interlace (PNG specification, third edition: 9.2 filters). */
export function readPng(bytes: Uint8Array): Pixels {
  const file = Buffer.from(bytes);
  if (file.toString('latin1', 1, 4) !== 'PNG') throw new Error('Not a PNG');
  const [width, height] = [file.readUInt32BE(16), file.readUInt32BE(20)];
  if (file[24] !== 8 || file[25] !== 6 || file[28] !== 0)
    throw new Error('Only 8-bit RGBA without interlace is read');
  const packed: Buffer[] = [];
  for (let at = 8; at < file.length; at += 12 + file.readUInt32BE(at)) {
    if (file.toString('latin1', at + 4, at + 8) === 'IDAT')
      packed.push(file.subarray(at + 8, at + 8 + file.readUInt32BE(at)));
  }
  const raw = inflateSync(Buffer.concat(packed));
  const stride = width * 4;
  const rgba = new Uint8Array(stride * height);
  for (let row = 0; row < height; row += 1) {
    const filter = raw[row * (stride + 1)] ?? 0;
    for (let at = 0; at < stride; at += 1) {
      const left = at >= 4 ? (rgba[row * stride + at - 4] ?? 0) : 0;
      const up = row > 0 ? (rgba[(row - 1) * stride + at] ?? 0) : 0;
      const upLeft = row > 0 && at >= 4 ? (rgba[(row - 1) * stride + at - 4] ?? 0) : 0;
      let guess = 0;
      if (filter === 1) guess = left;
      else if (filter === 2) guess = up;
      else if (filter === 3) guess = (left + up) >> 1;
      else if (filter === 4) guess = paeth(left, up, upLeft);
      rgba[row * stride + at] = (raw[row * (stride + 1) + 1 + at] ?? 0) + guess;
    }
  }
  return { width, height, rgba };
}

function paeth(left: number, up: number, upLeft: number): number {
  const estimate = left + up - upLeft;
  const toLeft = Math.abs(estimate - left);
  const toUp = Math.abs(estimate - up);
  const toUpLeft = Math.abs(estimate - upLeft);
  if (toLeft <= toUp && toLeft <= toUpLeft) return left;
  return toUp <= toUpLeft ? up : upLeft;
}
