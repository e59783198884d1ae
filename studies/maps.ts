// How well a map is known between its lines, on four measured stages. Run by `npm run study:maps`, some seconds; writes docs/maps.md and ends with 1
// where a stage misses what is asked for.
import { writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { MEASURED_MAPS } from '../checks/compressor-maps/measured-maps.ts';
import { askingTimes } from './maps/asking.ts';
import { judged } from './maps/judge.ts';
import { mapsPage } from './maps/page.ts';

const maps = MEASURED_MAPS.map(judged);
const failed = maps.filter(
  ({ left: { inner } }) =>
    inner.fit.pressureRatioRms > 0.012 ||
    !(inner.fit.efficiencyRms! <= 0.015) ||
    inner.fit.pressureRatioRms > 0.5 * inner.straight.pressureRatioRms,
);
const page = mapsPage(
  maps,
  askingTimes(maps[0]!.fitted),
  failed.map(({ name }) => name),
);
writeFileSync(fileURLToPath(new URL('../docs/maps.md', import.meta.url)), page);
console.log(page);
process.exitCode = failed.length === 0 ? 0 : 1;
