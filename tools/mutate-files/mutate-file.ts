import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { filesUnder, madeBase } from './bases.ts';
import { chanceOf } from './chance.ts';
import { type Outcome, readWholeWay } from './read-whole-way.ts';
import { spoiled } from './spoil.ts';

const samples = filesUnder(join(dirname(dirname(dirname(fileURLToPath(import.meta.url)))), 'samples'));

/** Half of the files are samples, half are made; both by the numbers alone. */
const SHARE_OF_SAMPLES = 0.5;

/** Spoils and reads file `number` of the run `seed`. A throw is a fault, with its words. */
export function mutateFile(seed: number, number: number): { what: string; outcome: Outcome } {
  const chance = chanceOf(seed * 1_000_003 + number);
  const base = chance.share() < SHARE_OF_SAMPLES ? chance.oneOf(samples) : madeBase(chance);
  const { bytes, ways } = spoiled(base.bytes, chance);
  const what = `${base.name} (${bytes.length} bytes): ${ways.join(', ')}`;
  try {
    return { what, outcome: readWholeWay(bytes, 'spoiled.csv') };
  } catch (trouble) {
    const words = trouble instanceof Error ? `${trouble.stack}` : String(trouble);
    return { what, outcome: { refusedFor: 'threw', pulls: 0, faults: [words] } };
  }
}
