// The coverage study: does a 95 % band hold the truth 95 times in 100? Run by `npm run study:coverage`, some minutes on two
// cores; writes docs/coverage.md and ends with 1 where a gate fails. `--sample`: a hundred runs a case, writes nothing.
// `--only <text>`: cases whose name has the text, writes nothing. `--runs <n>`: runs a case instead of the usual.
import { writeFileSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { performance } from 'node:perf_hooks';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { CASES } from './coverage/cases.ts';
import { throughGate } from './coverage/gates.ts';
import { type CaseResult, coveragePage } from './coverage/page.ts';
import { powerByHand } from './coverage/power.ts';
import { inProcesses, type Order } from './coverage/processes.ts';
import { SEED, STRETCH } from './coverage/run-case.ts';
import { addTally, emptyTally, type Tally } from './coverage/tally.ts';

const { values } = parseArgs({
  options: {
    sample: { type: 'boolean', default: false },
    only: { type: 'string' },
    runs: { type: 'string' },
  },
});
const runs = Number(values.runs ?? (values.sample ? 100 : 10_000));
if (!Number.isInteger(runs) || runs < 1) throw new Error('--runs takes a whole number from 1.');
const cases = CASES.filter(({ id }) => id.includes(values.only ?? ''));
const isWhole = !values.sample && values.only === undefined && values.runs === undefined;
const processes = Math.max(1, Math.min(availableParallelism(), 8));
console.error(`${cases.length} cases, ${runs} runs each, seed ${SEED}, ${processes} processes`);

const start = performance.now();
const orders = cases.flatMap(({ id }) => stretches(id));
// Stretches come back in any order; added up in that of their numbers, the same seeds give the same page to the last digit.
const back = new Map<string, Tally>();
await inProcesses(orders, processes, ({ order, tally }) => {
  back.set(`${order.caseId}/${order.stretch}`, tally);
  if (back.size % 40 === 0) console.error(`${Math.round((100 * back.size) / orders.length)} %`);
});
const results = cases.map((one): CaseResult => {
  const tally = emptyTally();
  for (const { stretch } of stretches(one.id)) addTally(tally, back.get(`${one.id}/${stretch}`)!);
  return { one, tally, gates: one.gates.map((gate) => throughGate(gate, tally)) };
});
const power = new Map(
  cases
    .filter(({ section }) => section === 'Power')
    .map(({ id, scene }) => [id, powerByHand(scene.pulls.length / 2)]),
);
const page = coveragePage(results, power);
if (isWhole) writeFileSync(fileURLToPath(new URL('../docs/coverage.md', import.meta.url)), page);
else console.log(page);

const failed = results.filter(({ gates }) => gates.some(({ outcome }) => outcome === 'failed'));
console.error(
  `${Math.round((performance.now() - start) / 1000)} s; ${results.length - failed.length} cases within their gates, ${failed.length} not${failed.map(({ one }) => `\n  ${one.id}`).join('')}`,
);
process.exitCode = failed.length === 0 ? 0 : 1;

function stretches(caseId: string): Order[] {
  return Array.from({ length: Math.ceil(runs / STRETCH) }, (_, stretch) => ({
    caseId,
    stretch,
    runs: Math.min(STRETCH, runs - stretch * STRETCH),
  }));
}
