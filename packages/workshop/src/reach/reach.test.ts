import { mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type CompressorMap, readAt, solveMatch } from '@pullbook/core/airpath';
import { mean } from '@pullbook/core/numeric';
import { type ReachAnswer, reach } from '@pullbook/core/reach';
import type { Result } from '@pullbook/core/remark';
import { type Book, openBook } from '@pullbook/store';
import type { ReachBundle } from '@pullbook/views/reach';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { makeDemoBook } from '../demo-book.ts';
import { reachReport } from '../edge/reach-report.ts';
import { readReachRequest } from '../edge/reach-request.ts';
import { history, undo } from '../history.ts';
import { addMapFromText } from '../maps.ts';
import { engineAtHand } from '../match/engine-at-hand.ts';
import { matchFromFile } from '../match/match-from-file.ts';
import { viewedPulls } from '../match/viewed-pulls.ts';
import { changePartsList, partsListOf, partsReport, resetPartsList } from './parts-list.ts';
import { reachFromFile } from './reach-from-file.ts';
import { reachOfCombination } from './reach-of-combination.ts';
import { runReach } from './run-reach.ts';
import { mapOfRung, rungFile } from './rung-file.ts';

const samples = fileURLToPath(new URL('../../../../samples/', import.meta.url));
const BASE = 'Supercharged, base cam';
const HP = 745.699_871_58;

let folder = '';
let book: Book;
let bundle: ReachBundle;
let answer: ReachAnswer;

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'pullbook-reach-'));
  await makeDemoBook(join(folder, 'demo'));
  book = await openBook(join(folder, 'demo'), { create: null });
  bundle = gotten(await reachOfCombination(book, BASE, { power: '520 hp', draws: 100, mostChanges: 1 }));
  answer = await runReach(bundle.input);
}, 60_000);
afterAll(async () => {
  await book.close();
  await rm(folder, { recursive: true, force: true });
});

function gotten<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(result.remarks[0]!.message);
  return result.value;
}

const fromFile = async (
  name: string,
  request: Parameters<typeof reachFromFile>[1] = {},
  change = (text: string) => text,
) =>
  reachFromFile(
    change(await readFile(join(samples, name), 'utf8')),
    { draws: 100, ...request },
    {
      fileName: name,
      folder: join(samples, name, '..'),
      book: null,
    },
  );

/** Highest power of a rung, W observed, as `pullbook match` gives it of the rung's file. */
async function matchedAgain(rung: ReachAnswer['now'], map: CompressorMap | null): Promise<number> {
  const text = gotten(rungFile(rung, map, { name: 'way' }));
  const report = gotten(
    await matchFromFile(text, { fileName: 'way.yaml', folder, book: null, bands: null, words: null }),
  );
  const last = rung.curve.engineSpeedRpm.at(-1)!;
  const within = report.points.filter(({ engineSpeedRpm }) => engineSpeedRpm <= last);
  return 1000 * Math.max(...within.map(({ brakePowerKw }) => brakePowerKw as number));
}

describe('a combination of the book', () => {
  test('is asked with its match and fit, the engine alone, its measured power in the standard, and its neighbours', () => {
    const { input, near, measured, asked } = bundle;
    expect(input.builds.map(({ id }) => id)).toEqual(['present', 'none']);
    expect(input.builds[0]!.fit!.pullIds).toHaveLength(3);
    expect(input.standard.id).toBe('sae-j1349');
    expect(input.standard.factor).toBeGreaterThan(0.9);
    // As the trials of the demo book have it: 496 hp at 84 mm, SAE J1349.
    expect(input.measuredNow!.power / HP).toBeCloseTo(496, 0);
    expect(measured!.pullIds).toEqual(input.measuredNow!.pullIds);
    expect(near.map(({ name, side }) => [name, side])).toEqual([
      ['Supercharged, 12° longer cam', 'above'],
      ['Supercharged, base cam, smaller blower pulley', 'below'],
      [BASE, 'below'],
      ['Naturally aspirated, base cam', 'below'],
    ]);
    expect(asked).toMatchObject({ power: '520 hp', what: 'peak power', correction: 'sae-j1349' });
  });

  test('a pair under boost is led back through the match: breathing so, it gains what was measured', async () => {
    const [cam] = bundle.input.breathing;
    expect(cam).toMatchObject({ ground: 'scaled from your data', name: '12° longer cam' });
    const engine = await engineAtHand(book, (await book.engines())[0]!.id, null).then(async (one) =>
      one.combinations.some(({ name }) => name === BASE)
        ? one
        : engineAtHand(book, (await book.engines())[1]!.id, null),
    );
    const powerOf = async (named: string) => {
      const { id } = engine.combinations.find(({ name }) => name === named)!;
      const pulls = await viewedPulls(book, engine.pulls.get(id)!, 'sae-j1349');
      return cam!.engineSpeedRpm.map((_, at) =>
        mean(pulls.map(({ view }) => readAt(view, 'power', cam!.engineSpeedRpm)[at]!)),
      );
    };
    const [before, after] = [await powerOf(BASE), await powerOf('Supercharged, 12° longer cam')];
    const { input } = bundle.input.builds[0]!.match!;
    const solved = (breathing: number[] | null) =>
      solveMatch({ ...input, swallowing: { ...input.swallowing, breathing } }).figures.brakePower;
    const nodes = input.baseline.engineSpeedRpm;
    const factor = nodes.map((speed, node) => {
      const place = cam!.engineSpeedRpm.indexOf(speed);
      return (input.swallowing.breathing?.[node] ?? 1) * (place < 0 ? 1 : cam!.factor[place]!);
    });
    const [asIs, breathed] = [solved(input.swallowing.breathing), solved(factor)];
    for (const [place, speed] of cam!.engineSpeedRpm.entries()) {
      const node = nodes.indexOf(speed);
      expect(breathed[node]! / asIs[node]!).toBeCloseTo(after[place]! / before[place]!, 3);
    }
    // It takes more than the gain in air to gain it in power at one pulley, for boost falls.
    expect(Math.max(...cam!.factor)).toBeGreaterThan(Math.max(...after.map((one, at) => one / before[at]!)));
    expect(cam!.edits).toContainEqual(expect.objectContaining({ section: 'cam', field: 'profile' }));
  });

  test('in parts off the main thread it says what one search says', () => {
    expect(reachReport(bundle, reach(bundle.input), null)).toEqual(reachReport(bundle, answer, null));
  });

  test('what is left is stopped by the impeller at the pulley worked out by hand', () => {
    // Smallest pulley: crank pulley x step-up x (limit + over-rev) / impeller limit = 165 mm x 3.6 x 6,900 / 52,000
    const byHand = (165 * 3.6 * 6900) / 52_000;
    const [left] = reachReport(bundle, answer, null).whatIsLeft;
    expect(left!.stoppedBy).toMatchObject({
      limit: 'impellerSpeed',
      engineSpeedRpm: 6900,
      threshold: 52_000,
    });
    expect(left!.blowerPulleyDiameterMm).toBeCloseTo(byHand, 1);
    expect(left!.buyable!.blowerPulleyDiameterMm).toBeCloseTo(80, 9);
  });

  test('each rung written as a match file gives its power again', async () => {
    expect(answer.rungs.length).toBeGreaterThan(3);
    for (const rung of [answer.now, ...answer.rungs]) {
      const observed = await matchedAgain(rung, await mapOfRung(book, rung));
      expect((observed * bundle.input.standard.factor) / rung.peakPower.value).toBeCloseTo(1, 6);
    }
  });

  test('an engine without supercharger is asked by its own pulls, and offered the superchargers of the book', async () => {
    const alone = gotten(
      await reachOfCombination(book, 'Naturally aspirated, base cam', {
        power: '400 hp',
        draws: 100,
        mostChanges: 1,
      }),
    );
    expect(alone.input.builds.map(({ match }) => match === null)).toEqual([true, false]);
    expect(alone.input.builds[1]!.change!.clears).toEqual(['supercharger', 'drive', 'cooler']);
    // A cam pulled under boost alone does here what the scaled baseline of that engine says of it.
    const scaled = gotten(
      await reachOfCombination(book, 'Naturally aspirated, 12° longer cam', { power: '400 hp' }),
    ).input.baseline;
    const [cam] = alone.input.breathing;
    for (const [at, speed] of cam!.engineSpeedRpm.entries()) {
      const airOf = ({ engineSpeedRpm, airFlow }: typeof scaled) => airFlow[engineSpeedRpm.indexOf(speed)]!;
      expect(cam!.factor[at]).toBeCloseTo(airOf(scaled) / airOf(alone.input.baseline), 6);
    }
    const { rungs, feasible } = await runReach(alone.input);
    expect(feasible).toBe(true);
    expect(rungs[0]!.changes[0]!.part).toBe('supercharger');
  });

  test.each([
    ['300 hp', {}, 'target-below-now', /measured in 3 pulls/],
    ['52000 hp', {}, 'target-far-above-now', /./],
    ['520', {}, 'missing-unit', /520/],
    ['520 hp', { at: '6000 rpm', window: '3000-6500 rpm' }, 'at-and-window', /two targets/],
    ['520 hp', { without: ['pully'] }, 'kind-of-change-not-known', /Did you mean pulley/],
    ['520 hp', { window: '6500 to 3000 rpm' }, 'window-not-read', /lower first/],
    ['520 hp', { correction: 'best' }, 'correction-not-known', /sae-j1349/],
  ])('a target of %s %o is refused: %s', async (power, more, code, message) => {
    const refused = await reachOfCombination(book, BASE, { power, ...more });
    expect(refused).toMatchObject({ ok: false, remarks: [{ code, level: 'refusal' }] });
    expect(refused.remarks[0]!.message).toMatch(message);
  });

  test('of its own it stops the engine nowhere below the speeds that are asked about', async () => {
    const over = await reachOfCombination(book, BASE, { power: '420 hp', window: '4000-6500 rpm' });
    if (!over.ok) throw new Error(over.remarks[0]!.message);
    const { speedLimits } = over.value.input;
    expect(bundle.input.speedLimits.some((speed) => speed < 6500)).toBe(true);
    expect(speedLimits.length).toBeGreaterThan(0);
    expect(Math.min(...speedLimits)).toBeGreaterThanOrEqual(6500);
  });

  test('without a baseline it says which pull to make', async () => {
    const refused = await reachOfCombination(book, 'Before the rebuild', { power: '400 hp' });
    expect(refused.ok).toBe(false);
    expect(refused.remarks[0]!.message).toMatch(/pull/i);
    expect(refused.remarks.at(-1)!.code).toBe('power-by-displacement-alone');
  });

  test('a map that no sheet names is tried in the drive at hand, and what is not known of it is said', async () => {
    const text = await readFile(join(samples, 'maps', 'shop-blower.csv'), 'utf8');
    gotten(await addMapFromText(book, text));
    const { input, sources } = gotten(await reachOfCombination(book, BASE, { power: '520 hp' }));
    const added = input.builds.find(({ name }) => name === 'Shop blower no. 2')!;
    expect(added.assumptions.map(({ code }) => code)).toEqual(
      expect.arrayContaining(['map-without-unit', 'fit-of-engine']),
    );
    expect(added.match!.input.drive.maximumImpellerSpeedRpm).toBeNull();
    expect(added.match!.input.baseline).toEqual(input.baseline);
    expect(added.change).toMatchObject({ part: 'supercharger', ground: 'scaled from your data' });
    expect(sources).toContainEqual(expect.objectContaining({ kind: 'map', name: 'Shop blower no. 2' }));
    gotten(await undo(book, null, { units: 'si', decimalMark: '.' }));
  });

  test('kinds of change that are left out are not tried', async () => {
    const { input } = gotten(
      await reachOfCombination(book, BASE, {
        power: '520 hp',
        without: ['pulley', 'fuel', 'supercharger', 'breathing', 'speedLimit'],
      }),
    );
    const { blowerPulleys, crankPulleys, fuels, breathing, speedLimits, builds, coolers } = input;
    expect([blowerPulleys, crankPulleys, fuels, breathing, speedLimits]).toEqual([[], [], [], [], []]);
    expect(builds).toHaveLength(1);
    expect(coolers.length).toBeGreaterThan(0);
  });
});

describe('the parts list of a shop', () => {
  test('is what is usual until it is changed, and again after a reset; the log can undo it', async () => {
    expect((await partsReport(book)).isOwn).toBe(false);
    const changed = gotten(await changePartsList(book, 'blowerPulleys: [{ diameter: 79 mm, cost: 2 }]'));
    expect(changed.isOwn).toBe(true);
    const list = await partsListOf(book);
    expect(list.blowerPulleys).toEqual([
      { diameter: 0.079, cost: 2, from: { source: 'the shop’s own word', kind: 'from memory' } },
    ]);
    expect(list.crankPulleys).toHaveLength(16);
    const { input } = gotten(await reachOfCombination(book, BASE, { power: '520 hp' }));
    expect(input.blowerPulleys).toEqual([{ diameter: 0.079, cost: 2 }]);
    const options = { units: 'si', decimalMark: '.' } as const;
    const [act] = (await history(book, options)).steps;
    expect(act!.changes.map(({ after }) => after)).toContain('79 mm, cost 2');
    gotten(await undo(book, null, options));
    expect((await partsReport(book)).isOwn).toBe(false);
    gotten(await changePartsList(book, 'beltRibs: [{ ribs: 6 }]'));
    expect(gotten(await resetPartsList(book)).isOwn).toBe(false);
  });

  test('nothing of a bad one is taken', async () => {
    const before = await partsReport(book);
    const refused = await changePartsList(book, 'beltRibs: [{ ribs: 6 }]\nfuels: [{ fuel: rocket juice }]');
    expect(refused).toMatchObject({ ok: false, remarks: [{ code: 'fuel-not-known', line: 2 }] });
    expect(await partsReport(book)).toEqual(before);
  });
});

describe('a match file', () => {
  test.each([
    ['match/fitted.yaml', '300 hp'],
    ['match/rated-point.yaml', '310 hp'],
  ])('%s: each rung run again gives its power', async (name, power) => {
    const { bundle: asked, maps } = gotten(await fromFile(name, { power, mostChanges: 1 }));
    const found = await runReach(asked.input);
    expect(found.feasible).toBe(true);
    expect(asked.input.standard).toEqual({ id: 'observed', factor: 1 });
    for (const rung of [found.now, ...found.rungs])
      expect((await matchedAgain(rung, maps[rung.buildId] ?? null)) / rung.peakPower.value).toBeCloseTo(1, 6);
  });

  test('lifting the limit that binds changes the answer', async () => {
    const asked = { power: '340 hp', without: ['fuel', 'cooler', 'speedLimit'] };
    const [bound, lifted] = await Promise.all(
      [(text: string) => text, (text: string) => text.replace('58000 rpm', '70000 rpm')].map(
        async (change) => {
          const made = gotten(await fromFile('match/from-a-table.yaml', asked, change));
          return runReach(made.bundle.input);
        },
      ),
    );
    expect(bound!.left[0]!.stoppedBy!.id).toBe('impellerSpeed');
    expect(lifted!.left[0]!.most.peakPower.value).toBeGreaterThan(
      1.01 * bound!.left[0]!.most.peakPower.value,
    );
    expect([bound!.feasible, lifted!.feasible]).toEqual([false, true]);
  });

  test('its reach section says target, cap, parts and another supercharger; the command line goes before it', async () => {
    const { bundle: asked } = gotten(await fromFile('reach/straight-six.yaml'));
    expect(asked.input.target).toMatchObject({ what: 'peak power' });
    expect(asked.input.target.power / HP).toBeCloseTo(320, 3);
    expect(asked.input.blowerPulleys).toHaveLength(17);
    expect(asked.input.builds.map(({ name }) => name)).toEqual([
      'as it is',
      'no supercharger',
      'Larger unit, rated only',
    ]);
    expect(asked.input.breathing.map(({ name }) => name)).toEqual(['ported heads']);
    const over = gotten(await fromFile('reach/straight-six.yaml', { power: '330 hp', boostCap: '9 psi' }));
    expect(over.bundle.input.target.power / HP).toBeCloseTo(330, 3);
    expect(over.bundle.asked).toMatchObject({ power: '330 hp', boostCap: '9 psi' });
  });

  test('a file of which one rung is written is not asked again', async () => {
    const refused = await fromFile(
      'match/rated-point.yaml',
      { power: '310 hp' },
      (text) => `${text}overSpeed: |\n  engine speed [rpm], air\n  3000, 1\n  6000, 1\n`,
    );
    expect(refused).toMatchObject({ ok: false, remarks: [{ code: 'reach-of-rung' }] });
  });

  test('a rung without supercharger is no match to write', async () => {
    const { bundle: asked, maps } = gotten(await fromFile('reach/naturally-aspirated.yaml'));
    const found = await runReach(asked.input);
    expect(rungFile(found.now, maps.present!, { name: 'x' })).toMatchObject({
      ok: false,
      remarks: [{ code: 'rung-without-supercharger' }],
    });
    expect(
      (await matchedAgain(found.rungs[0]!, maps[found.rungs[0]!.buildId]!)) / found.rungs[0]!.peakPower.value,
    ).toBeCloseTo(1, 6);
  });
});

test('a target is read as it was asked, so that it can be asked again', () => {
  const read = gotten(
    readReachRequest({ power: '390 kW', window: '3000rpm-6500rpm', without: ['step-up', 'Fuel'] }),
  );
  expect(read).toMatchObject({
    target: { what: 'average power', power: 390_000, windowRpm: [3000, 6500] },
    without: ['stepUp', 'fuel'],
    mostChanges: 2,
  });
});
