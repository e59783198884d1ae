import type { OriginalFile, Pull } from '@pullbook/core/pull';
import { AT, channel, fileOf, pull } from './things.ts';

export const PULLS_A_FILE = 2;

/** A file with its pulls that follows from its name alone, so that whoever finds it can tell whether it is whole. */
export function importedFile(name: string): { file: OriginalFile; bytes: Uint8Array; pulls: Pull[] } {
  const random = randomFrom(name);
  const text = Array.from({ length: 20 + Math.floor(random() * 2000) }, () => random().toFixed(6)).join('\n');
  const { file, bytes } = fileOf(`${name}\n${text}\n`, name);
  const pulls = Array.from({ length: PULLS_A_FILE }, (_, index) => {
    const rows = 50 + Math.floor(random() * 4000);
    const samples = () =>
      Float64Array.from({ length: rows }, () => (random() < 0.01 ? Number.NaN : random() * 6500));
    const channels = [channel('engineSpeed', samples()), channel('torque', samples())];
    return pull(`${name}/${index}`, { channels, recordedAt: AT, fileHash: file.hash });
  });
  return { file, bytes, pulls };
}

/** Numbers from 0 to 1 that follow from a text: the hash FNV-1a (Fowler, Noll, Vo), then a 32-bit mixing step a number. */
export function randomFrom(text: string): () => number {
  let state = 0x811c9dc5;
  for (const letter of text) state = Math.imul(state ^ letter.codePointAt(0)!, 0x01000193);
  return () => {
    state = (state + 0x9e3779b9) | 0;
    let mixed = Math.imul(state ^ (state >>> 16), 0x85ebca6b);
    mixed = Math.imul(mixed ^ (mixed >>> 13), 0xc2b2ae35);
    return ((mixed ^ (mixed >>> 16)) >>> 0) / 2 ** 32;
  };
}
