import { readFileSync } from 'node:fs';
import { join } from 'node:path';

/** Lines of one of this folder's files without the heading, split at commas. */
export function readCsv(name: string): string[][] {
  const [, ...lines] = readFileSync(join(import.meta.dirname, name), 'utf8')
    .trim()
    .split('\n');
  return lines.map((line) => line.split(','));
}

/** How far `found` is from `expected`, as a share of it; the plain distance from 0. */
export function relativeError(found: number, expected: number): number {
  return Math.abs(expected === 0 ? found : found / expected - 1);
}
