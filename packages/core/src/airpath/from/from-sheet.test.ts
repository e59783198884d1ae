import { describe, expect, test } from 'vitest';
import { testSheet } from '../../combination/test-sheet.ts';
import { dryAir, inventedBaseline, ratedMap } from '../match/match-input.testing.ts';
import { solveMatch } from '../match/solve-match.ts';
import type { SpreadPart } from '../model.ts';
import { matchInputOf, type SheetToMatch } from './from-sheet.ts';

const AIR = dryAir(99_000, 298.15);
const BASELINE = inventedBaseline(AIR);

const SECTIONS = {
  shortBlock: { cylinders: 8, bore: '101.6 mm', stroke: '88.4 mm', compressionRatio: 9.5 },
  intake: { airFilter: 'none', throttleLoss: '2 kPa', throttleLossFlow: '0.4 kg/s' },
  exhaust: { backPressure: '9.9 kPa' },
  fuelSystem: { type: 'port injection' },
  supercharger: {
    type: 'centrifugal',
    stepUp: 3.5,
    mechanicalEfficiency: '95 %',
    pipeLoss: '1 kPa',
    pipeLossFlow: '0.4 kg/s',
  },
  drive: { type: 'ribbed belt', crankPulleyDiameter: '190 mm', blowerPulleyDiameter: '95 mm', slip: '1 %' },
};

type Sections = Record<string, Record<string, unknown>>;

const from = (sections: Sections, more: Partial<SheetToMatch> = {}) =>
  matchInputOf({ sheet: testSheet(sections), baseline: BASELINE, map: ratedMap(), air: AIR, ...more });

const change = (section: string, lines: Record<string, unknown>): Sections => ({
  ...SECTIONS,
  [section]: { ...(SECTIONS as Sections)[section], ...lines },
});

function ready(sections: Sections, more: Partial<SheetToMatch> = {}) {
  const made = from(sections, more);
  if (!made.ok) throw new Error(made.remarks[0]?.message);
  return made.value;
}

const codes = (made: ReturnType<typeof ready>) => made.assumptions.map(({ code }) => code);
const COOLED = {
  type: 'air to water',
  coolant: 'cell water',
  coolantTemperature: '18 °C',
  effectiveness: '78 %',
};

describe('matchInputOf', () => {
  test('what is on the sheet is taken as it is', () => {
    const { input } = ready(SECTIONS);
    expect(input.displacement).toBeCloseTo(8 * (Math.PI / 4) * 0.1016 ** 2 * 0.0884, 9);
    expect(input.drive).toMatchObject({
      kind: 'ribbed belt',
      pulleyRatio: 2,
      stepUp: 3.5,
      slip: 0.01,
    });
    expect(input.drive.mechanicalEfficiency).toBeCloseTo(0.95, 12);
    expect(input.throttleLoss).toMatchObject({ pressureDifference: 2000, atFlow: 0.4 });
    expect(input.inletLoss.pressureDifference).toBe(0);
    expect(input.swallowing.exhaustPressureRatio).toBeCloseTo(1.1, 9);
    expect(input.cooler).toBeNull();
    expect(input.bypass.state).toBe('shut');
  });

  test('it can be solved as it stands, with finite figures at every speed', () => {
    const { figures } = solveMatch(ready(SECTIONS).input);
    expect(Array.from(figures.boost).every((value) => value > 0)).toBe(true);
    expect(Array.from(figures.brakePower).every(Number.isFinite)).toBe(true);
  });

  test('what is stated goes before the sheet, and takes its assumption away', () => {
    const stated = {
      pulleyRatio: 2.3,
      stepUp: 3.1,
      slip: 0,
      mechanicalEfficiency: 1,
      workFactor: 1,
      exhaustPressureRatio: 1,
      displacement: 0.005,
      constantEfficiency: 0.7,
      pressureTermRatio: null,
      heatExponent: 0,
      breathing: { fromRpm: 4000, toRpm: 5000, share: 0.08 },
    };
    const { input, assumptions } = ready(SECTIONS, { stated });
    expect(input.drive).toMatchObject({ pulleyRatio: 2.3, stepUp: 3.1, slip: 0, mechanicalEfficiency: 1 });
    expect(input.displacement).toBe(0.005);
    expect(input.compressor.constantEfficiency).toBe(0.7);
    expect(input.swallowing.pressureTermRatio).toBeNull();
    expect(input.swallowing.breathing).toEqual(
      BASELINE.engineSpeedRpm.map((speed) => (speed >= 4000 && speed <= 5000 ? 1.08 : 1)),
    );
    expect(assumptions.map(({ code }) => code)).toEqual(['map-assumed']);
  });

  test('each thing that is assumed is one remark with its figure and ground', () => {
    const bare: Sections = {
      shortBlock: SECTIONS.shortBlock,
      supercharger: { stepUp: 3.5 },
      drive: { crankPulleyDiameter: '190 mm', blowerPulleyDiameter: '95 mm' },
      cooler: { type: 'air to water', coolant: 'cell water' },
    };
    const made = ready(bare);
    const wanted = [
      'drive-kind-assumed',
      'slip-assumed',
      'mechanical-efficiency-assumed',
      'cooler-effectiveness-assumed',
      'cooler-loss-assumed',
      'coolant-temperature-assumed',
      'inlet-loss-assumed',
      'pipe-loss-assumed',
      'exhaust-pressure-assumed',
      'work-factor-assumed',
    ];
    expect(codes(made)).toEqual(expect.arrayContaining(wanted));
    expect(new Set(codes(made)).size).toBe(codes(made).length);
    for (const { message } of made.assumptions) expect(message).toMatch(/\d|ribbed belt/);
    const cooler = made.assumptions.find(({ code }) => code === 'cooler-effectiveness-assumed')!;
    expect(cooler.message).toMatch(/80 %.*75 to 90 %.*±10 %/);
  });

  test('the throttle’s loss is that of the pull without supercharger where it is not on the sheet', () => {
    const { input } = ready({ ...SECTIONS, intake: { airFilter: 'none' } });
    expect(input.throttleLoss).toBeNull();
  });

  test.each([
    ['14 °C', 287.15, 'water'],
    ['ice water, 3 °C', 276.15, 'ice water'],
    ['57 °F', 287.04, 'water'],
  ])('cooler water noted with the pull, %s, goes before the sheet', (coolerWater, kelvin, by) => {
    const { input } = ready({ ...SECTIONS, cooler: COOLED }, { tune: { coolerWater } });
    expect(input.cooler!.coolantTemperature).toBeCloseTo(kelvin, 1);
    expect(input.cooler!.by).toBe(by);
  });

  test.each([
    ['manifold, behind the throttle', 'manifold'],
    ['in the carburettor hat', 'before throttle'],
    ['pipe before the throttle', 'before throttle'],
    ['blower outlet', 'compressor outlet'],
    [undefined, 'manifold'],
  ])('boost read "%s" is at the %s', (boostTap, tap) => {
    expect(ready(SECTIONS, { places: boostTap === undefined ? {} : { boostTap } }).input.tap).toBe(tap);
  });

  test('fuel before the manifold cools the charge and takes room, as a stated estimate', () => {
    const made = ready(change('fuelSystem', { type: 'blow-through carburettor' }));
    expect(made.input.charge.evaporationCooling).toBe(20);
    expect(codes(made)).toEqual(expect.arrayContaining(['evaporation-assumed', 'fuel-vapour-assumed']));
    expect(ready(SECTIONS).input.charge).toMatchObject({ evaporationCooling: 0, fuelVapour: 0 });
  });

  test.each([
    [
      'a pulley of zero',
      change('drive', { blowerPulleyDiameter: '10 mm' }),
      { pulleyRatio: 0 },
      'drive-not-above-zero',
    ],
    ['no pulleys', { ...SECTIONS, drive: { type: 'ribbed belt' } }, {}, 'no-pulleys'],
    ['no step-up', { ...SECTIONS, supercharger: { type: 'centrifugal' } }, {}, 'no-step-up'],
    ['another kind of supercharger', change('supercharger', { type: 'roots' }), {}, 'not-centrifugal'],
    ['no displacement', { ...SECTIONS, shortBlock: { cylinders: 8 } }, {}, 'no-displacement'],
    [
      'ice without effect',
      { ...SECTIONS, cooler: { type: 'air to water with ice', effectiveness: 0 } },
      {},
      'cooler-contradiction',
    ],
    ['an efficiency in per cent', SECTIONS, { constantEfficiency: 70 }, 'share-out-of-range'],
  ])('%s is refused, with what to do', (_, sections, stated, code) => {
    const made = from(sections, { stated });
    expect(made).toMatchObject({ ok: false, remarks: [{ code, level: 'refusal' }] });
    expect(made.remarks[0]!.message.length).toBeGreaterThan(40);
  });

  test('a baseline without air is refused with the speed', () => {
    const made = from(SECTIONS, { baseline: { ...BASELINE, airFlow: BASELINE.airFlow.map(() => 0) } });
    expect(made).toMatchObject({ ok: false, remarks: [{ code: 'baseline-not-above-zero' }] });
    expect(made.remarks[0]!.message).toMatch(/3,000 rpm/);
  });
});

describe('spread of a match', () => {
  const deviation = (made: ReturnType<typeof ready>, part: SpreadPart) => {
    const group = made.spread.find(({ parts }) => parts.includes(part));
    if (group === undefined) return 0;
    const line = group.parts.indexOf(part);
    return group.factor[line]![line]!;
  };

  test('a measured air is good to 2 %, fuel and mixture to 3, torque and efficiency to 8', () => {
    const of = (airBasis: 'air flow' | 'fuel and mixture' | 'torque and efficiency') =>
      deviation(ready(SECTIONS, { baseline: { ...BASELINE, airBasis } }), 'baselineAir');
    expect([of('air flow'), of('fuel and mixture'), of('torque and efficiency')]).toEqual([0.02, 0.03, 0.08]);
  });

  test('two pulleys of one engine share all keys but none with another map', () => {
    const keys = (made: ReturnType<typeof ready>) => made.spread.map(({ key }) => key);
    const smaller = ready(change('drive', { blowerPulleyDiameter: '90 mm' }));
    expect(keys(smaller)).toEqual(keys(ready(SECTIONS)));
    const other = ready(SECTIONS, { map: { ...ratedMap(), mark: 'another' } });
    expect(keys(other).filter((key) => !keys(smaller).includes(key))).toEqual([
      'map another',
      'map another, over speed',
    ]);
  });

  test('keys go by figures and not by ids, which are others in another book', () => {
    const keys = (mapId: string, pullIds: string[]) =>
      ready(SECTIONS, {
        map: { ...ratedMap(), mapId },
        baseline: { ...BASELINE, pullIds, mark: 'of its curves' },
      }).spread.map(({ key }) => key);
    expect(keys('here', ['a', 'b'])).toEqual(keys('there', ['c', 'd']));
  });

  test('a spread stated as 0 takes the part out', () => {
    const made = ready(SECTIONS, { stated: { spread: { head: 0, slip: 0, work: 0.1 } } });
    expect([deviation(made, 'head'), deviation(made, 'slip'), deviation(made, 'work')]).toEqual([0, 0, 0.1]);
  });

  test('teeth do not slip', () => {
    const made = ready(
      change('drive', { type: 'toothed belt', crankPulleyTeeth: 60, blowerPulleyTeeth: 30 }),
    );
    expect(made.input.drive).toMatchObject({ kind: 'toothed belt', pulleyRatio: 2, slip: 0 });
    expect(deviation(made, 'slip')).toBe(0);
  });
});
