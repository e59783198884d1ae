import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { captured, capturedJson } from '../../apps/cli/src/testing/captured.ts';
import { alone, blown, logOf, printedMap, sheetAlone, sheetBlown } from './invented-world.ts';

/**
 * Asked of the next pulley at every speed: shares of boost and power, and Pa where boost is little. Neither air nor fuel was logged, so
 * that boost is less sure than on the demo: 4.1 % was seen above 4,250 r/min and 1 kPa (up to 8 %) below, always too high, before these
 * limits were set.
 */
const MOST_OFF = { boost: 0.05, littleBoost: 1200, power: 0.03 };
const [FITTED, NEXT] = [88.9, 82.55];
const QUESTION = 'What does 3.25 in add?';
const SMALLER = 'Eight, 3.25 in pulley';

let folder = '';
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'pullbook-another-engine-'));
});
afterAll(() => rm(folder, { recursive: true, force: true }));

/** A command line on the book; it must go through. */
async function pullbook(...argv: string[]) {
  const { code, out, err } = await captured([...argv, '--book', join(folder, 'book')]);
  if (code !== 0) throw new Error(err);
  return out;
}
async function file(name: string, text: string): Promise<string> {
  await writeFile(join(folder, name), text);
  return join(folder, name);
}
async function imported(
  combination: string,
  at: Parameters<typeof logOf>[0],
  { seeds, isBlown = true, trial = null }: { seeds: number[]; isBlown?: boolean; trial?: string | null },
) {
  const names = await Promise.all(
    seeds.map((seed) => file(`${isBlown ? 'blown' : 'alone'}-${seed}.csv`, logOf(at, seed, isBlown))),
  );
  const weather = ['--pressure', '98.6kPa', '--temperature', '295.15K', '--humidity', '0%'];
  const into = trial === null ? [] : ['--trial', trial];
  const of = ['--combination', combination, '--corrected', 'observed', ...weather, ...into];
  await pullbook('import', ...names, ...of);
}

test('from an empty book to the next pulley of an engine that the program was not made on: foretold, kept, pulled, met', {
  timeout: 120_000,
}, async () => {
  await pullbook('combination', 'add', await file('alone.yaml', sheetAlone), '--engine', 'Eight');
  await pullbook(
    'combination',
    'add',
    await file('blown.yaml', sheetBlown),
    '--made-from',
    'Eight, no blower',
  );
  await pullbook('map', 'add', await file('map.csv', printedMap()));
  await imported('Eight, no blower', alone, { seeds: [1, 2, 3], isBlown: false });
  await imported('Eight, 3.5 in pulley', (rpm) => blown(rpm, FITTED), { seeds: [4, 5] });
  const change = ['--set', 'drive.blowerPulleyDiameter=3.25 in (measured)'];
  await pullbook('combination', 'add', '--from', 'Eight, 3.5 in pulley', '--name', SMALLER, ...change);
  const both = ['--combination', 'Eight, 3.5 in pulley=3.5 in', '--combination', `${SMALLER}=3.25 in`];
  await pullbook('trial', 'start', QUESTION, ...both);

  const { json } = await capturedJson([
    'match',
    '--trial',
    QUESTION,
    '--keep',
    'B',
    '--book',
    join(folder, 'book'),
  ]);
  const off = (
    json.matches[1].points as { engineSpeedRpm: number; boostKpa: number; brakePowerKw: number }[]
  ).map(({ engineSpeedRpm, boostKpa, brakePowerKw }) => {
    const truth = blown(engineSpeedRpm, NEXT);
    return {
      boost: boostKpa * 1000 - truth.boost,
      of: truth.boost,
      power: (brakePowerKw * 1000) / truth.power - 1,
    };
  });
  expect(off.length).toBeGreaterThan(50);
  for (const { boost, of } of off)
    expect(Math.abs(boost)).toBeLessThan(Math.max(MOST_OFF.boost * of, MOST_OFF.littleBoost));
  for (const { power } of off) expect(Math.abs(power)).toBeLessThan(MOST_OFF.power);

  await imported(SMALLER, (rpm) => blown(rpm, NEXT), { seeds: [6, 7], trial: QUESTION });
  const figures = await pullbook('figures');
  expect(figures).toContain('Predictions: 2 of 2 inside their bands so far.');
});
