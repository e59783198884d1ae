import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { type Computing, inLine, threads } from '@pullbook/compute';
import { programFolder } from '../places.ts';
import { jobs } from './jobs.ts';

/** Two files dropped at once are read side by side; more would only take turns on a shop's machine. */
const THREADS = 2;

/** Long computations: in threads where the program runs as built, in line where it runs from its sources. */
export const longWork: Computing<typeof jobs> = made();

function made(): Computing<typeof jobs> {
  if (import.meta.url.endsWith('.ts')) return inLine(jobs);
  const file = join(programFolder(), 'apps', 'cli', 'dist', 'long-work.mjs');
  if (!existsSync(file)) throw new Error(`${file} is missing: the program was taken apart.`);
  return threads(pathToFileURL(file), THREADS);
}
