import { createHash } from 'node:crypto';
import type { Channel } from '@pullbook/core/pull';
import { bytesFromSamples } from './samples.ts';

/** SHA-256 over names, units and samples of a pull's channels, hex: a pull read back is whole when it is the same. */
export function channelsHash(channels: readonly Channel[]): string {
  const hash = createHash('sha256');
  for (const { meaning, name, unit, kind, origin, values } of channels) {
    hash.update(JSON.stringify([meaning, name, unit, kind, origin, values.length]));
    hash.update(bytesFromSamples(values));
  }
  return hash.digest('hex');
}
