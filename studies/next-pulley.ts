// How often the next pulley lies in the band foretold of it, on invented engines with hidden faults. Run by `npm run study:match`, a minute or two; writes
// docs/next-pulley.md and ends with 1 where a gate is missed.
import { writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { missed } from './next-pulley/judge.ts';
import { nextPulleyPage } from './next-pulley/page.ts';
import { runEngine } from './next-pulley/run.ts';

const ENGINES = 200;
const SEED = 1;

const runs = Array.from({ length: ENGINES }, (_, number) => runEngine(SEED, number));
const page = nextPulleyPage(runs);
writeFileSync(fileURLToPath(new URL('../docs/next-pulley.md', import.meta.url)), page);
console.log(page);
process.exitCode = missed(runs).length === 0 ? 0 : 1;
