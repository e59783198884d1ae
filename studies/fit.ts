// How well a fit to one pulley's pulls foretells the next pulley, and what is left open in the difference of two cams fitted at once, on invented worlds.
// Run by `npm run study:fit`, some minutes; writes docs/fit.md and ends with 1 where a band holds too little. `-- --from 1 --to 30` for other worlds, without a page.
import { writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { fitPage } from './fit/page.ts';
import { heldBy } from './fit/tally.ts';
import { judgedWorld, type World } from './fit/world.ts';

/** Seeds that were not looked at while the widths of the fit were set. */
const FROM = 101;
const TO = 130;
const ASKED = 0.9;

const { values } = parseArgs({ options: { from: { type: 'string' }, to: { type: 'string' } } });
const from = Number(values.from ?? FROM);
const to = Number(values.to ?? TO);
const worlds: World[] = [];
for (let seed = from; seed <= to; seed++) worlds.push(await judgedWorld(seed));
const failed = [
  { name: 'boost of the next pulley', of: ({ nextPulley }: World) => nextPulley.boost },
  { name: 'power of the next pulley', of: ({ nextPulley }: World) => nextPulley.power },
  { name: 'boost between the cams', of: ({ cam }: World) => cam.boost },
  { name: 'power between the cams', of: ({ cam }: World) => cam.power },
].filter(({ of }) => !(heldBy(worlds, of) >= ASKED));
const page = fitPage(
  worlds,
  failed.map(({ name }) => name),
);
if (from === FROM && to === TO)
  writeFileSync(fileURLToPath(new URL('../docs/fit.md', import.meta.url)), page);
console.log(page);
process.exitCode = failed.length === 0 ? 0 : 1;
