// Spoils logs, match files and parts lists by seed and reads them the whole way: nothing may throw, hang, eat the memory, or be refused without
// a reason and a place. Prints a table; a fault is printed with the number that repeats it, and ends it with 1.
//   npm run mutate-files -- --count 20000 --seed 1
//   npm run mutate-files -- --seed 1 --only 1234
import { performance } from 'node:perf_hooks';
import { parseArgs } from 'node:util';
import { mutateFile } from './mutate-files/mutate-file.ts';

const LONGEST_MS = 2000;
const MOST_MEMORY_BYTES = 1e9;

const { values } = parseArgs({
  options: {
    count: { type: 'string', default: '20000' },
    seed: { type: 'string', default: '1' },
    only: { type: 'string' },
  },
});
const seed = Number(values.seed);
const first = values.only === undefined ? 0 : Number(values.only);
const last = values.only === undefined ? Number(values.count) : first + 1;

const refused = new Map<string, number>();
const times: number[] = [];
let [accepted, pulls, faults, peakMemory] = [0, 0, 0, 0];
let slowest = { milliseconds: 0, what: '' };
for (let number = first; number < last; number++) {
  const started = performance.now();
  const found = await mutateFile(seed, number);
  const milliseconds = performance.now() - started;
  times.push(milliseconds);
  if (milliseconds > slowest.milliseconds) slowest = { milliseconds, what: `${found.what}` };
  peakMemory = Math.max(peakMemory, process.memoryUsage().rss);
  const problems = [...found.outcome.faults];
  if (milliseconds > LONGEST_MS) problems.push(`took ${milliseconds.toFixed(0)} ms`);
  if (found.outcome.refusedFor === null) accepted += 1;
  else refused.set(found.outcome.refusedFor, (refused.get(found.outcome.refusedFor) ?? 0) + 1);
  pulls += found.outcome.pulls;
  if (problems.length > 0) {
    faults += 1;
    console.log(`FAULT --seed ${seed} --only ${number}: ${found.what}: ${[...new Set(problems)].join('; ')}`);
  }
}
if (peakMemory > MOST_MEMORY_BYTES) {
  faults += 1;
  console.log(`FAULT: the process took ${(peakMemory / 1e6).toFixed(0)} MB`);
}
times.sort((a, b) => a - b);
const row = (what: string, figure: string | number) =>
  console.log(`${what.padEnd(34)}${String(figure).padStart(12)}`);
row('spoiled files', times.length);
row('accepted', accepted);
row('pulls in them', pulls);
for (const [code, count] of [...refused].sort((a, b) => b[1] - a[1])) row(`refused: ${code}`, count);
row('median, ms', times[times.length >> 1]!.toFixed(1));
row('slowest, ms', slowest.milliseconds.toFixed(0));
console.log(`  ${slowest.what}`);
row('peak memory, MB', (peakMemory / 1e6).toFixed(0));
row('faults', faults);
if (faults > 0) process.exitCode = 1;
