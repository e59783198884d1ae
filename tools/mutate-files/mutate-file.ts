import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { filesUnder, madeBase } from './bases.ts';
import { chanceOf } from './chance.ts';
import type { Outcome } from './outcome.ts';
import { readWholeWay } from './read-whole-way.ts';
import { folderOf, readWritten } from './read-written.ts';
import { spoiled } from './spoil.ts';

const folder = join(dirname(dirname(dirname(fileURLToPath(import.meta.url)))), 'samples');
const logs = filesUnder(folder, /\.(csv|txt)$/u);
const written = ['match', 'reach'].flatMap((kind) => filesUnder(join(folder, kind), /\.yaml$/u, folder));

/** Two fifths of the files are samples of logs, two fifths are made, the rest are match files and parts lists; all by the numbers alone. */
const SHARE_OF_LOGS = 0.4;
const SHARE_OF_WRITTEN = 0.2;

/** Spoils and reads file `number` of the run `seed`. A throw is a fault, with its words. */
export async function mutateFile(seed: number, number: number): Promise<{ what: string; outcome: Outcome }> {
  const chance = chanceOf(seed * 1_000_003 + number);
  const share = chance.share();
  const isWritten = share < SHARE_OF_WRITTEN;
  const base = isWritten
    ? chance.oneOf(written)
    : share < SHARE_OF_WRITTEN + SHARE_OF_LOGS
      ? chance.oneOf(logs)
      : madeBase(chance);
  const { bytes, ways } = spoiled(base.bytes, chance);
  const what = `${base.name} (${bytes.length} bytes): ${ways.join(', ')}`;
  try {
    const outcome = isWritten
      ? await readWritten(bytes, base.name, folderOf(folder, base.name))
      : readWholeWay(bytes, 'spoiled.csv');
    return { what, outcome };
  } catch (trouble) {
    const words = trouble instanceof Error ? `${trouble.stack}` : String(trouble);
    return { what, outcome: { refusedFor: 'threw', pulls: 0, faults: [words] } };
  }
}
