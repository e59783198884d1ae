import { expect, test } from 'vitest';
import { solveMatch } from '../airpath/index.ts';
import { fitMatch } from '../fit/index.ts';
import { said } from '../remark/index.ts';
import { AS_IT_IS } from './as-it-is.ts';
import { groupsOf } from './groups.ts';
import { judged } from './judged.ts';
import { aloneBuild, buildOf, fuelOf, PLAIN_SHEET, reachInput, sheetOf } from './reach-input.testing.ts';
import { searchGround } from './search-ground.ts';
import { whatIsLeft } from './what-is-left.ts';
import { ranPast, withWhatRan } from './what-ran.ts';

const small = sheetOf({ fuelSystem: { ...PLAIN_SHEET.fuelSystem, injectorFlow: '45 lb/h' } });
const measuredNow = { power: 400e3, pullIds: ['pull'] };
const injectorsOf = (one: ReturnType<typeof judged>) => one!.readings.find(({ id }) => id === 'injectors')!;
const smaller = { ...AS_IT_IS, drive: { by: 'blowerPulley', size: 0.09 } as const };

test('injectors that the engine was pulled past bind what goes further, and not what ran', () => {
  const [planned, pulled] = [null, measuredNow].map((now) =>
    searchGround(reachInput({ measuredNow: now }, small)),
  );
  expect(injectorsOf(judged(planned!, AS_IT_IS))).toMatchObject({ binds: true });
  expect(injectorsOf(judged(planned!, AS_IT_IS)).margin).toBeLessThan(0);
  expect(injectorsOf(judged(pulled!, AS_IT_IS))).toMatchObject({ binds: false });
  expect(judged(pulled!, AS_IT_IS)!.holds).toBe(true);
  expect(injectorsOf(judged(pulled!, smaller))).toMatchObject({ binds: true });
  expect(judged(pulled!, smaller)!.holds).toBe(false);
});

test('a maker’s limit binds whatever ran', () => {
  const slow = sheetOf({ supercharger: { ...PLAIN_SHEET.supercharger, maximumImpellerSpeed: '39000 rpm' } });
  const one = judged(searchGround(reachInput({ measuredNow }, slow)), AS_IT_IS)!;
  expect(one.passed.map(({ id }) => id)).toContain('impellerSpeed');
});

test('no further than it ran, to what a rough look tells apart', () => {
  const reading = { ...injectorsOf(judged(searchGround(reachInput({}, small)), AS_IT_IS)), margin: -0.1 };
  const ran = ranPast([reading, { ...reading, id: 'pump', margin: 0.2 }]);
  expect([...ran]).toEqual([['injectors', -0.1]]);
  const bindsAt = (margin: number) => withWhatRan([{ ...reading, margin }], ran)[0]!.binds;
  expect([-0.05, -0.1, -0.12].map(bindsAt)).toEqual([false, false, true]);
});

test('a belt of which nothing is told is no way to a belt that holds', () => {
  const ribs = [4, 10].map((one) => ({ ribs: one, cost: 1 as const }));
  const weak = sheetOf({ drive: { ...PLAIN_SHEET.drive, beltRibs: 6, wrapAngle: '150 deg' } });
  const ground = searchGround(reachInput({ beltRibs: ribs, binding: {} }, weak));
  const fast = { ...AS_IT_IS, drive: { by: 'blowerPulley', size: 0.07 } as const };
  const without = judged(searchGround(reachInput({ binding: {} }, weak)), fast)!;
  expect(without.passed.map(({ id }) => id)).toContain('belt');
  expect(judged(ground, fast)!.follows.beltRibs).not.toBe(0);
});

test('what is left tells where the spark would stop it, behind others that stop it first', () => {
  const input = reachInput({ binding: { fuelAndCompression: false, belt: false } });
  const { stops } = whatIsLeft(input, 0)!;
  const ratios = stops.map(({ overallRatio }) => overallRatio);
  expect(ratios).toEqual([...ratios].sort((a, b) => a - b));
  expect(stops.at(0)?.limit.id).toBe('impellerSpeed');
  expect(stops.map(({ limit }) => limit.id)).toContain('spark');
});

test('the engine alone goes by the fuel it was pulled on, whatever is in the tank now', () => {
  const [e85, methanol] = ['E85', 'methanol'].map((name) => fuelOf(name).fuel);
  const present = buildOf(sheetOf());
  const builds = [{ ...present, madeOf: { ...present.madeOf!, fuelBehind: e85! } }, aloneBuild()];
  const input = reachInput({ builds });
  const peakOn = (fuel: typeof e85) =>
    judged(searchGround({ ...input, supply: { ...input.supply, fuel: fuel! } }), { ...AS_IT_IS, build: 1 })!
      .peak.value;
  expect(peakOn(e85)).toBeCloseTo(Math.max(...input.baseline.brakePower), 3);
  // Worked from handbook heating values and ratios: 19.93 / 6.47 over (0.857 x 26.81 + 0.143 x 43.4) / 9.80, as indicated work.
  expect(peakOn(methanol) / peakOn(e85)).toBeGreaterThan(1.03);
  expect(peakOn(methanol) / peakOn(e85)).toBeLessThan(1.07);
});

test('a fuel is not praised for standing a charge that a lost cooler makes hotter', () => {
  const from = { kind: 'common practice', source: 'common practice, no source' } as const;
  const none = { id: 'none', name: 'no cooler', cooler: null, cost: 0, from } as const;
  const groups = groupsOf(reachInput({ coolers: [none], fuels: [fuelOf('E85')] }));
  expect(groups.some(({ picked }) => picked.cooler !== null)).toBe(true);
  expect(groups.some(({ picked }) => picked.cooler !== null && picked.fuel !== null)).toBe(false);
});

test('another cam on the pulley that was pulled is another set-up: more is open of it than of what was pulled', () => {
  const build = buildOf(sheetOf());
  const { input, spread } = build.match!;
  const { engineSpeedRpm, figures } = solveMatch(input);
  const fit = fitMatch([
    {
      input,
      spread,
      pull: {
        pullId: 'pull',
        engineSpeedRpm,
        brakePower: Array.from(figures.brakePower),
        boost: Array.from(figures.boost),
        chargeTemperature: null,
        dischargeTemperature: null,
        airFlow: null,
        impellerSpeedRpm: null,
        air: input.air,
      },
    },
  ]);
  if (!fit.ok) throw new Error(fit.remarks[0]!.message);
  const breathing = [
    {
      id: 'cam',
      name: 'cam',
      engineSpeedRpm: [3000],
      factor: [1.03],
      spread: 0,
      ground: 'rule of thumb' as const,
      from: said`stated`,
      edits: [],
      cost: 3 as const,
      pullIds: [],
    },
  ];
  const ground = searchGround(reachInput({ builds: [{ ...build, fit: fit.value }], breathing }));
  const keysOf = (places: number[]) =>
    judged(ground, { ...AS_IT_IS, breathing: places })!.match!.spread.map(({ key }) => key);
  const [as, cam] = [keysOf([]), keysOf([0])];
  expect(as.filter((key) => key.startsWith('own of'))).toEqual([]);
  expect(cam.filter((key) => key.startsWith('own of'))).toHaveLength(1);
});
