// One comparison with its bands as the first thing a process computes: what is compiled while it runs is in the time.
import { performance } from 'node:perf_hooks';
import { comparisonTimed } from './comparison.ts';

const compare = comparisonTimed(true);
const start = performance.now();
compare();
process.stdout.write(String(performance.now() - start));
