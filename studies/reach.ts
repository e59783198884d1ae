// Whether a rung of the ladder makes what it says, on invented engines with hidden faults. Run by `npm run study:reach`, some minutes; writes docs/reach-study.md
// and ends with 1 where a gate is missed.
import { writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { missed } from './reach/judge.ts';
import { reachPage } from './reach/page.ts';
import { runWorld } from './reach/run.ts';

const WORLDS = 100;
const SEED = 1;

const all = Array.from({ length: WORLDS }, (_, number) => runWorld(SEED, number)).flat();
const page = reachPage(all, WORLDS);
writeFileSync(fileURLToPath(new URL('../docs/reach-study.md', import.meta.url)), page);
console.log(page);
process.exitCode = missed(all).length === 0 ? 0 : 1;
