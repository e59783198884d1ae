import { endianness } from 'node:os';

/** Bytes of a channel as stored: Float64, little-endian, NaN kept bit by bit. */
export function bytesFromSamples(values: Float64Array): Buffer {
  const bytes = Buffer.from(new Uint8Array(values.buffer, values.byteOffset, values.byteLength));
  return endianness() === 'LE' ? bytes : bytes.swap64();
}

/** Inverse of `bytesFromSamples`; the values have memory of their own. */
export function samplesFromBytes(stored: Uint8Array): Float64Array {
  const bytes = Buffer.from(stored);
  const ordered = endianness() === 'LE' ? bytes : bytes.swap64();
  const values = new Float64Array(bytes.length / 8);
  new Uint8Array(values.buffer).set(ordered);
  return values;
}
