// One contender of the reading bench in a process of its own, so that nobody's garbage is swept on another's time.
// Prints the milliseconds of a second run over the whole file; the first warms up.
import { readFileSync } from 'node:fs';
import { performance } from 'node:perf_hooks';
import { defaultRecipe, viewPull } from '@pullbook/core/pull';
import { guessedMapping, pullsFromReading, readTextFile } from '@pullbook/formats';
import { parse } from 'csv-parse/sync';
import papaparse from 'papaparse';
import { inferSchema, initParser } from 'udsv';
import { inventedPull } from '../../packages/core/src/pull/invented-pull.testing.ts';

const [contender = '', path = ''] = process.argv.slice(2);
const bytes = readFileSync(path);
const decoded = () => new TextDecoder().decode(bytes);

/** Each gives the number of rows it made. */
const CONTENDERS: Record<string, () => number> = {
  udsv: () => {
    const text = decoded();
    return initParser(inferSchema(text)).stringArrs(text).length;
  },
  papaparse: () => papaparse.parse(decoded(), { delimiter: ',', fastMode: true }).data.length,
  'csv-parse': () => (parse(bytes) as string[][]).length,
  'ours, to numbers': () => readOurs().rowCount,
  'ours, to pulls': () => pullsOurs().rowCount,
  'ours, to views': () => {
    const { drafts, rowCount } = pullsOurs();
    const view = viewPull(inventedPull(drafts[0]!.channels), defaultRecipe('observed'));
    if (view.curve === null) throw new Error('the bench pull has no curve');
    return rowCount;
  },
};

function readOurs() {
  const reading = readTextFile(bytes, 'bench.csv');
  if (!reading.ok) throw new Error('the bench file was refused');
  return reading.value;
}

function pullsOurs() {
  const reading = readOurs();
  const drafts = pullsFromReading(reading, guessedMapping(reading));
  if (!drafts.ok) throw new Error('the bench pull was refused');
  return { drafts: drafts.value, rowCount: reading.rowCount };
}

const work = CONTENDERS[contender];
if (!work) throw new Error(`no contender "${contender}"`);
const rows = work();
const start = performance.now();
if (work() !== rows) throw new Error('two runs gave different rows');
process.stdout.write(JSON.stringify({ milliseconds: performance.now() - start, rows }));
