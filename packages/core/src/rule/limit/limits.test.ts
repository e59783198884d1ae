import { describe, expect, test } from 'vitest';
import { solveMatch } from '../../airpath/index.ts';
import { plainInput } from '../../airpath/match/match-input.testing.ts';
import { ruleNamed } from '../catalogue.ts';
import { LIMIT_IDS } from '../model.ts';
import { ofPull, sheetOf, tablePull } from '../rules.testing.ts';
import { thresholdNamed } from '../speaker.ts';
import { LIMIT_CASES } from './limit-cases.testing.ts';
import { limitFindings } from './limit-findings.ts';
import { LIMITS } from './limits.ts';
import { limitOf, type PlannedTest, planned } from './planned.testing.ts';
import { readLimits } from './read-limits.ts';
import { unknownLimits } from './unknown-limits.ts';

const PSI = 6894.757;
const HP = 745.69987;

describe.each(LIMIT_IDS)('%s', (id) => {
  const of = LIMIT_CASES[id];

  test('is passed where it is, with label, source, and what to do', () => {
    const passed = limitOf(id, of.passes)!;
    expect(passed).toMatchObject({ id, ruleId: LIMITS[id].ruleId, label: LIMITS[id].label });
    expect(passed.margin).toBeLessThan(0);
    expect(passed.stay === 'below').toBe(passed.value > passed.threshold);
    expect(passed.source).not.toBe('');
    expect(passed.said.text).toMatch(/[.!]$/);
    expect(passed.said.text).not.toMatch(/NaN|undefined|null|Infinity/);
    // What to do stands only where it is passed.
    expect(passed.said.text.length).toBeGreaterThan(limitOf(id, of.keeps)!.said.text.length);
    if (of.threshold !== undefined) expect(passed.threshold / of.threshold).toBeCloseTo(1, 5);
  });

  test('has room where it is kept', () => {
    const kept = limitOf(id, of.keeps)!;
    expect(kept.margin).toBeGreaterThanOrEqual(0);
    expect(kept.margin).toBeLessThan(1.5);
  });

  test('has a rule that is looked at in a plan, or in a match', () => {
    expect(ruleNamed(LIMITS[id].ruleId)!.places.some((place) => place === 'plan' || place === 'match')).toBe(
      true,
    );
  });
});

describe('impeller', () => {
  /** 165 mm x 3.6 x 6,900 / 52,000 is 78.819 mm: the smallest pulley worked by hand. */
  const onPulley = (millimetre: number): PlannedTest => ({
    highestEngineSpeedRpm: 6700,
    input: { drive: { pulleyRatio: 165 / millimetre, stepUp: 3.6, maximumImpellerSpeedRpm: 52_000 } },
  });
  test('the smallest pulley is the one worked by hand: 78.8 mm', () => {
    expect(limitOf('impellerSpeed', onPulley((165 * 3.6 * 6900) / 52_000))!.margin).toBeCloseTo(0, 12);
    expect(limitOf('impellerSpeed', onPulley(78.85))!.margin).toBeGreaterThan(0);
    expect(limitOf('impellerSpeed', onPulley(78.8))!.margin).toBeLessThan(0);
    expect(limitOf('impellerSpeed', onPulley(80))).toMatchObject({ engineSpeedRpm: 6900, binds: true });
  });
  test('slip takes nothing off it', () => {
    const slipping = { ...onPulley(80), input: { drive: { ...onPulley(80).input!.drive, slip: 0.05 } } };
    expect(limitOf('impellerSpeed', slipping)!.value).toBeCloseTo((165 / 80) * 3.6 * 6900, 6);
  });
  test('the tip binds where the maker’s limit is not known, else cautions', () => {
    expect(limitOf('tipSpeed', { input: { drive: { maximumImpellerSpeedRpm: null } } })!.binds).toBe(true);
    expect(limitOf('tipSpeed', { input: { drive: { maximumImpellerSpeedRpm: 70_000 } } })!.binds).toBe(false);
  });
  test('a wheel whose size was assumed has no tip speed', () => {
    const map = { ...planned({}).input!.compressor.map, isDiameterAssumed: true };
    expect(limitOf('tipSpeed', { input: { compressor: { map } } })).toBeNull();
  });
});

describe('fuel', () => {
  const { keeps } = LIMIT_CASES.injectors;
  /** 3 bar against a manifold at 1 bar of boost is 2 bar: the root of 2/3 of the flow. */
  test('a rail that does not rise with boost passes less', () => {
    const boosted = { ...keeps, figures: { ...keeps.figures, manifoldPressure: 199_000 } };
    const follows = limitOf('injectors', boosted)!.value;
    const open = { ...keeps.supply, rail: { pressure: 3e5, reference: 'open air' as const } };
    expect(limitOf('injectors', { ...boosted, supply: open })!.value / follows).toBeCloseTo(
      Math.sqrt(1.5),
      6,
    );
  });
  test('the duty of 62 lb/h for 420 lb/h by eight is 84.7 %', () => {
    expect(limitOf('injectors', keeps)!.value).toBeCloseTo(420 / (8 * 62), 4);
  });
  test('a pump is asked at base and boost, and at the voltage it gets', () => {
    const asked = LIMIT_CASES.pump.keeps;
    const value = (test: PlannedTest) => limitOf('pump', test)!.value;
    const pump = asked.supply!.pump!;
    const boosted = { ...asked, figures: { ...asked.figures, manifoldPressure: 199_000 } };
    expect(value(boosted)).toBeLessThan(value(asked));
    expect(value({ ...asked, supply: { ...asked.supply, pump: { ...pump, voltage: 12 } } })).toBeLessThan(
      value(asked),
    );
  });
});

describe('spark, fuel and compression', () => {
  test('the table binds where the octane is not known, and cautions where the spark is', () => {
    const { passes } = LIMIT_CASES.fuelAndCompression;
    const unknown = { ...planned({}).supply.fuel, researchOctane: null, motorOctane: null };
    expect(limitOf('fuelAndCompression', { ...passes, supply: { fuel: unknown } })!.binds).toBe(true);
    expect(limitOf('fuelAndCompression', passes)!.binds).toBe(false);
    expect(limitOf('spark', { ...LIMIT_CASES.spark.keeps, supply: { fuel: unknown } })).toBeNull();
  });
  test('alcohol without a cooler has no column', () => {
    const methanol = {
      ...planned({}).supply.fuel,
      parts: [{ substance: 'methanol' as const, volumeShare: 1 }],
    };
    expect(
      limitOf('fuelAndCompression', { ...LIMIT_CASES.fuelAndCompression.passes, supply: { fuel: methanol } }),
    ).toBeNull();
  });
  test('cast pistons are asked for less pressure than any', () => {
    const of = (pistons: string) => {
      const { passes } = LIMIT_CASES.cylinderPressure;
      return limitOf('cylinderPressure', {
        ...passes,
        sheet: { shortBlock: { ...passes.sheet!.shortBlock, pistons } },
      })!;
    };
    expect(of('cast').threshold).toBeLessThan(of('forged').threshold);
    expect(of('cast').value).toBe(of('forged').value);
  });
});

describe('parts', () => {
  test('the shop’s own power of the block goes before what is told of main caps, and binds', () => {
    const sheet = (lines: Record<string, string>) => ({ shortBlock: { cylinders: '8', ...lines } });
    const figures = { brakePower: 600 * HP };
    const caps = limitOf('block', { sheet: sheet({ mainCaps: 'two-bolt' }), figures })!;
    expect(caps).toMatchObject({ binds: false, value: (600 * HP) / 8 });
    expect(caps.said.text).toContain('many have failed above');
    const own = limitOf('block', { sheet: sheet({ mainCaps: 'two-bolt', powerLimit: '700 hp' }), figures })!;
    expect(own.binds).toBe(true);
    expect(own.margin).toBeCloseTo(1 - 600 / 700, 6);
    expect(own.source).toBe('the sheet: Short block, Power the short block is trusted with (not stated)');
  });
  test('cast pistons by boost or power, whichever is nearer', () => {
    const sheet = { shortBlock: { cylinders: '8', pistons: 'cast' } };
    const of = (psi: number, horsepower: number) =>
      limitOf('pistons', { sheet, figures: { boost: psi * PSI, brakePower: horsepower * HP } })!;
    expect(of(7, 300).kind).toBe('gaugePressure');
    expect(of(3, 520).kind).toBe('power');
  });
  test('hollow floats caution, solid ones are not asked', () => {
    const of = (carburettor: string) =>
      limitOf('boost', {
        sheet: { fuelSystem: { type: 'blow-through carburettor' }, intake: { carburettor } },
        figures: { boost: 9 * PSI },
      });
    expect(of('four-barrel')).toMatchObject({ binds: false, threshold: expect.closeTo(8 * PSI, 0) });
    expect(of('four-barrel, solid floats')).toBeNull();
  });
});

test('of a pull the same limits stand, without a speed where none is told', () => {
  const found = ofPull(
    tablePull({ boost: () => 70e3 }),
    sheetOf({ shortBlock: { powerLimit: '200 kW', boostLimit: '60 kPa' } }),
  ).filter(({ ruleId }) => ruleId === 'V46' || ruleId === 'V50');
  expect(found.map(({ ruleId, threshold }) => [ruleId, threshold])).toEqual([
    ['V46', 200e3],
    ['V50', 60e3],
  ]);
  for (const { remark, value, threshold } of found) {
    expect(value).toBeGreaterThan(threshold!);
    expect(remark.message).toMatch(/is trusted with/);
    expect(remark.message).not.toMatch(/NaN| at /);
  }
});

describe('what stands beside a reading', () => {
  test('the shop’s own threshold is used and named', () => {
    const own = limitOf('injectors', LIMIT_CASES.injectors.keeps, { 'V17.duty': 0.8 })!;
    expect(own).toMatchObject({ threshold: 0.8, source: 'the shop’s own value of V17.duty' });
    expect(own.margin).toBeLessThan(0);
  });
  test('what binds can be set', () => {
    const at = planned({ ...LIMIT_CASES.choke.passes });
    const binds = (binding: object) => readLimits(at, {}, binding).find(({ id }) => id === 'choke')!.binds;
    expect([binds({}), binds({ choke: true })]).toEqual([false, true]);
  });
  test('an estimated surge edge cautions, a measured one binds', () => {
    const { figures } = LIMIT_CASES.surge.passes;
    const map = planned({}).input!.compressor.map;
    const of = (changes: Partial<typeof map>) =>
      limitOf('surge', { figures: figures!, input: { compressor: { map: { ...map, ...changes } } } })!;
    expect(of({ form: 'points', leftEnd: 'surge' }).binds).toBe(true);
    expect(of({ form: 'points', leftEnd: 'not known' }).binds).toBe(false);
    // 2 % below the edge: the edge lies at 102 / 100 of the flow.
    expect(of({}).margin).toBeCloseTo(1 / 1.02 - 1, 9);
  });
  test('a bare sheet has readings of next to nothing, and says which lines would let it be looked at', () => {
    const at = planned({ figures: { boost: 70e3, brakePower: 300e3, airFlow: 0.4 } });
    const asked = unknownLimits(at)
      .map(({ message }) => message)
      .join('\n');
    for (const line of [
      'Pistons',
      'Rods',
      'Stroke',
      'Injector flow',
      'Pump flow',
      'Compression ratio',
      'Head gasket',
      'Feed line, inside',
    ])
      expect(asked).toContain(line);
    expect(readLimits(at, {}, {}).map(({ id }) => id)).toEqual(['impellerSpeed', 'tipSpeed']);
  });
  test('without a supercharger nothing is asked of one', () => {
    const at = planned({ input: null, figures: { boost: 0, brakePower: 300e3 } });
    expect(
      unknownLimits(at)
        .map(({ message }) => message)
        .join('\n'),
    ).not.toMatch(/mpeller|Belt|Boost that/);
    expect(readLimits(at, {}, {}).filter(({ margin }) => margin < 0)).toEqual([]);
  });
  test('nothing that is not a number is read, whatever the curve holds', () => {
    const at = planned({
      ...LIMIT_CASES.injectors.keeps,
      figures: { airFlow: Number.NaN, boost: Number.NaN },
    });
    const readings = readLimits(at, {}, {});
    for (const { value, margin } of readings) expect([value, margin].every(Number.isFinite)).toBe(true);
    expect(limitFindings(readings, at)).toHaveLength(readings.length);
  });
});

test('turned faster, a whole match has less room in all that goes with speed, air and boost', () => {
  const marginsAt = (stepUp: number) => {
    const plain = plainInput();
    const input = { ...plain, drive: { ...plain.drive, stepUp } };
    const { supply } = LIMIT_CASES.pump.keeps;
    const at = {
      ...planned({ boostCap: 100e3, supply: { ...supply!, ...LIMIT_CASES.injectors.keeps.supply! } }),
      input,
      curve: solveMatch(input),
    };
    return new Map(readLimits(at, {}, {}).map(({ id, margin }) => [id, margin]));
  };
  const rows = [2.8, 3.1, 3.4, 3.7, 4].map(marginsAt);
  for (const id of ['impellerSpeed', 'tipSpeed', 'belt', 'injectors', 'pump', 'boostCap'] as const) {
    const margins = rows.map((row) => row.get(id)!);
    expect(margins.every(Number.isFinite), id).toBe(true);
    for (const [place, margin] of margins.slice(1).entries())
      expect(margin, id).toBeLessThan(margins[place]!);
  }
});

test('thresholds that are passed in a plan can be set by the shop', () => {
  for (const id of [
    'V44.share',
    'V45.bolts',
    'V46.castPistons',
    'V47.cast',
    'V48.latest',
    'V49.fastest',
    'V50.floats',
    'V52.charge',
  ])
    expect(thresholdNamed(id)?.fixed).toBeUndefined();
});
