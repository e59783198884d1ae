// Speed as a table: medians of several runs, each beside a named peer in the same run or a stated limit.
// Run by `npm run bench`; never asserted in tests, since a shared machine's clock is no judge.
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { performance } from 'node:perf_hooks';
import { fileURLToPath } from 'node:url';
import { gzipSync } from 'node:zlib';
import { drawStack, sceneToSvg } from '@pullbook/charts';
import { defaultRecipe, viewPull } from '@pullbook/core/pull';
import { openBook } from '@pullbook/store';
import {
  makeDemoBook,
  matchOfTrial,
  reachOfCombination,
  stillOf,
  trialCards,
  trialPageOf,
} from '@pullbook/workshop';
import { launch } from '../apps/web/browser/launch.ts';
import { startPullbook } from '../apps/web/browser/start.ts';
import { bigBookRows } from './bench/big-book-rows.ts';
import { busyChart } from './bench/busy-chart.ts';
import { comparisonTimed, largestTimed } from './bench/comparison.ts';
import { cursorMoves } from './bench/cursor-moves.ts';
import { matchInPage } from './bench/match-in-page.ts';
import { hundredMatches, linesLeftOut, sampledMatches } from './bench/matching.ts';
import { pageTried } from './bench/page-tried.ts';
import { planTimed } from './bench/planning.ts';
import { publishingRows } from './bench/publishing.ts';
import { hundredSparks, searches } from './bench/reaching.ts';
import { timeReading } from './bench/reading.ts';

const root = dirname(dirname(fileURLToPath(import.meta.url)));

interface Row {
  what: string;
  median: number;
  against: string;
  limit: number;
  unit: string;
}

const median = (values: number[]) => values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)]!;

/** Median of `runs` timings after one that is not counted, ms. */
async function timed(runs: number, work: () => unknown): Promise<number> {
  const times: number[] = [];
  for (let run = 0; run <= runs; run += 1) {
    const start = performance.now();
    await work();
    if (run > 0) times.push(performance.now() - start);
  }
  return median(times);
}

const rows: Row[] = [];
const add = (what: string, value: number, against: string, limit: number, unit = 'ms') =>
  rows.push({ what, median: value, against, limit, unit });

const folder = mkdtempSync(join(tmpdir(), 'pullbook-bench-'));
const { stages, peers } = timeReading(folder, 5);
const fastest = peers.reduce((best, peer) => (peer.milliseconds < best.milliseconds ? peer : best));
const splitting = peers.map(({ name, milliseconds }) => `${name} ${milliseconds.toFixed(0)}`).join(', ');
for (const { what, milliseconds } of stages)
  add(
    `1,000,000 rows x 20 columns: ${what}`,
    milliseconds,
    `only splitting it: ${splitting} ms`,
    1.5 * fastest.milliseconds,
  );
await makeDemoBook(join(folder, 'demo'));
const book = await openBook(join(folder, 'demo'));
const heads = await book.pullHeads();
const curve = (await book.pulls(heads.filter((head) => head.form === 'curve').map((head) => head.id)))[0]!;
add(
  'a logged pull to its view (window, spikes, correction, grid, peaks)',
  await timed(20, () => viewPull(curve, defaultRecipe('sae-j1349'))),
  'limit',
  20,
);

const options = { units: 'us', decimalMark: '.' } as const;
const trials = await book.trials();
const openedAndShown = async (work: (fresh: typeof book) => Promise<unknown>) => {
  const fresh = await openBook(join(folder, 'demo'));
  await work(fresh);
  await fresh.close();
};
add(
  'open the demo book and work out all trial cards, nothing remembered',
  await timed(5, () => openedAndShown((fresh) => trialCards(fresh, options))),
  'limit',
  1000,
);
add(
  'open it and work out one trial page, nothing remembered',
  await timed(5, () => openedAndShown((fresh) => trialPageOf(fresh, trials[0]!.id, options))),
  'limit',
  300,
);
add(
  'the same page once more from the open book',
  await timed(10, () => trialPageOf(book, trials[0]!.id, options)),
  'limit',
  100,
);
let moved = 0;
const windowMoved = () => {
  moved += 1;
  const averagesWindowRpm: [number, number] = [3000 + 50 * moved, 6000];
  return trialPageOf(book, trials[0]!.id, options, { averagesWindowRpm });
};
add('the same page with its window moved', await timed(10, windowMoved), 'limit', 100);
add(
  '5 pulls against 5 with the band for all speeds, nothing remembered',
  await timed(15, comparisonTimed(true)),
  'limit',
  50,
);
add('the same as the first thing that a process computes', firstComparison(7), 'limit', 50);
add('the same pulls once more', await timed(30, comparisonTimed(false)), 'limit', 5);
add('critical value for 80 speeds at once, nothing remembered', await timed(15, largestTimed()), 'limit', 15);
add('the plan of a trial: some eighty orders judged', await timed(9, planTimed()), 'limit', 150);
add('a supercharger match at 60 engine speeds', (await timed(15, hundredMatches())) / 100, 'limit', 0.35);
await reachRows();
const sampled = sampledMatches();
add('10,000 sampled matches and their bands, in two threads', await timed(3, sampled.run), 'limit', 2000);
await sampled.close();
add(
  'the largest measured map, each of its lines left out in turn',
  await timed(5, linesLeftOut()),
  'limit',
  1000,
);
await matchRows();
const size = { width: 1000, height: 900, text: 13, theme: 'light', ground: true } as const;
const busy = busyChart(20, 2000);
add(
  '20 pulls x 2,000 points, four panels, to SVG',
  await timed(20, () => sceneToSvg(drawStack(busy, size).scene)),
  'limit',
  30,
);
add(
  'a 4K still as PNG',
  await timed(5, () =>
    stillOf(book, trials[0]!.id, options, { format: 'png', size: '4k', theme: 'dark', ground: true }),
  ),
  'limit',
  1000,
);
await publishingRows(book, join(folder, 'published'), timed, add);
await book.close();
await bigBookRows(join(folder, 'big'), timed, add);

const commandLine = join(root, 'apps/cli/dist/pullbook.mjs');
const fuel = ['fuel', '--power', '500hp', '--fuel', 'e85', '--induction', 'boosted', '--json'];
const air = ['air', '--pressure', '98.2kPa', '--temperature', '30C', '--humidity', '45%', '--json'];
add(
  '`pullbook air`, whole process',
  await timed(9, () => spawnSync(process.execPath, [commandLine, ...air])),
  'limit',
  500,
);
const reach = ['reach', '--book', join(folder, 'demo'), '--combination', 'Supercharged, base cam'];
add(
  '`pullbook reach` of the demo book, whole process',
  await timed(3, () => spawnSync(process.execPath, [commandLine, ...reach, '--power', '520hp', '--json'])),
  'limit',
  3000,
);
add(
  '`pullbook fuel`, whole process',
  await timed(9, () => spawnSync(process.execPath, [commandLine, ...fuel])),
  'limit',
  500,
);
add(
  '`node -e 0`, whole process (what any command pays)',
  await timed(9, () => spawnSync(process.execPath, ['-e', '0'])),
  'for comparison',
  Number.NaN,
);

add('script loaded by the first page, gzipped', await firstLoadKb(), 'limit', 250, 'kB');
const moves = await cursorMoves(busy);
add('a move of the cursor over that chart, script in the browser, mean of 200', moves.scriptMs, 'limit', 8);
add('the same with style, layout and paint on the main thread', moves.taskMs, 'for comparison', Number.NaN);
rmSync(folder, { recursive: true });

console.log(`Node.js ${process.version}, medians\n`);
console.log('| what | median | against | ratio |\n|---|---:|---|---:|');
for (const row of rows) {
  const limit = Number.isNaN(row.limit)
    ? row.against
    : row.against === 'limit'
      ? `limit ${row.limit} ${row.unit}`
      : `${row.against}; limit 1.5 times`;
  const ratio = Number.isNaN(row.limit) ? '' : (row.median / row.limit).toFixed(2);
  console.log(`| ${row.what} | ${row.median.toPrecision(3)} ${row.unit} | ${limit} | ${ratio} |`);
}

/** A trial whose reason rests on its supercharger match: its page, its match, and what the page of the match works out by itself. */
async function matchRows(): Promise<void> {
  const rests = (await book.trials()).find(
    ({ question }) => question === 'What does the longer cam add at the same pulley?',
  )!;
  const early = { early: true };
  add(
    'open it and work out the page of a trial with a match, before the match',
    await timed(5, () => openedAndShown((fresh) => trialPageOf(fresh, rests.id, options, {}, early))),
    'limit',
    300,
  );
  add(
    'open it and work out the match of a trial, five boosted pulls fitted',
    await timed(5, () => openedAndShown((fresh) => matchOfTrial(fresh, rests.id))),
    'limit',
    1000,
  );
  add('the same match once more', await timed(10, () => matchOfTrial(book, rests.id)), 'limit', 50);
  const match = await matchOfTrial(book, rests.id);
  if (!match.ok) throw new Error(match.remarks[0]!.message);
  add('the page of a match with another pulley tried', await timed(30, pageTried(match.value)), 'limit', 16);
  const { matchMs, pageMs } = await matchInPage(match.value);
  add('a supercharger match at 60 engine speeds, in the browser', matchMs, 'limit', 0.35);
  add('the page of a match with another pulley tried, in the browser', pageMs, 'limit', 16);
}

/** From a target to ways to it: at the size that is asked for, and in the demo book. */
async function reachRows(): Promise<void> {
  const { whole, first, stopped, close } = searches();
  const size = '4 superchargers x 40 pulleys x 3 coolers x 4 fuels';
  add(`a search for a target: ${size}, in two threads`, await timed(5, whole), 'limit', 1000);
  add('the first ways of that search', median(await gathered(5, first)), 'limit', 200);
  add('that search stopped: until it is over', median(await gathered(5, stopped)), 'limit', 100);
  await close();
  add('how much spark a fuel allows at one charge', (await timed(9, hundredSparks())) / 100, 'limit', 1);
  const asked = (fresh: typeof book) =>
    reachOfCombination(fresh, 'Supercharged, base cam', { power: '520 hp' });
  add(
    'open the demo book and find all that a search for a target rests on, nothing remembered',
    await timed(5, () => openedAndShown(asked)),
    'limit',
    1000,
  );
}

/** What some runs say of themselves, after one that is not counted. */
async function gathered(runs: number, one: () => Promise<number>): Promise<number[]> {
  await one();
  const said: number[] = [];
  for (let run = 0; run < runs; run++) said.push(await one());
  return said;
}

/** Median of what the first comparison takes in so many processes of its own, ms. */
function firstComparison(runs: number): number {
  const child = fileURLToPath(new URL('./bench/comparison-child.ts', import.meta.url));
  const times = Array.from({ length: runs }, () => {
    const ended = spawnSync(process.execPath, ['--import', 'tsx', child]);
    if (ended.status !== 0) throw new Error(String(ended.stderr));
    return Number(ended.stdout);
  });
  return median(times);
}

/** All script that the browser asks for until the list of trials stands, as gzip would send it, kB. */
async function firstLoadKb(): Promise<number> {
  const pullbook = await startPullbook('demo');
  const browser = await launch();
  const page = await browser.newPage();
  const sizes: Promise<number>[] = [];
  page.on('response', (response) => {
    if (new URL(response.url()).pathname.endsWith('.js'))
      sizes.push(response.body().then((body) => gzipSync(body).length));
  });
  await page.goto(pullbook.address);
  await page.getByRole('heading', { level: 1 }).waitFor();
  await page.waitForLoadState('networkidle');
  const bytes = (await Promise.all(sizes)).reduce((sum, size) => sum + size, 0);
  await browser.close();
  await pullbook.stop();
  return bytes / 1000;
}
