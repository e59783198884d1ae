import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Channel, defaultRecipe, PLAIN_TREATMENT, type Pull, viewPull } from '../pull/index.ts';
import {
  type InventedSweep,
  inventedChannel,
  inventedPoints,
  inventedPull,
  inventedSweep,
  inventedTorque,
} from '../pull/invented-pull.testing.ts';
import { compareCombinations } from './compare-combinations.ts';
import type { ComparedInput } from './model.ts';

const recipe = defaultRecipe('sae-j1349');

function input(key: string, ...pulls: Pull[]): ComparedInput {
  return { key, combinationId: key, pulls: pulls.map((pull) => ({ pull, view: viewPull(pull, recipe) })) };
}

let made = 0;
function swept(options: Partial<InventedSweep> = {}, changes: Partial<Pull> = {}): Pull {
  made += 1;
  const { channels } = inventedSweep({
    torqueAt: inventedTorque,
    torqueNoise: 0.004,
    speedNoiseRpm: 4,
    seed: made,
    ...options,
  });
  return inventedPull(channels, { id: `pull ${made}`, name: `pull ${made}`, ...changes });
}

const table = (
  torqueAt: (speed: number) => number,
  from = 2500,
  to = 6500,
  step = 100,
  changes: Partial<Pull> = {},
): Pull => {
  made += 1;
  const speeds = Array.from({ length: Math.floor((to - from) / step) + 1 }, (_, row) => from + step * row);
  return inventedPull(inventedPoints(speeds, torqueAt), {
    id: `pull ${made}`,
    name: `pull ${made}`,
    ...changes,
  });
};

const codes = (comparison: ReturnType<typeof compareCombinations>) =>
  comparison.remarks.map((one) => one.code);

describe('the gain', () => {
  test('of a pull over itself is nothing, everywhere', () => {
    const pull = swept();
    const { gains } = compareCombinations([input('A', pull), input('B', { ...pull, id: 'again' })]);
    expect(gains[0]).toMatchObject({
      meanPower: 0,
      meanPowerRatio: 0,
      meanTorque: 0,
      crossoversRpm: [],
      band: null,
      verdict: null,
    });
    expect(gains[0]!.power.every((value) => Number.isNaN(value) || value === 0)).toBe(true);
  });

  test('of an engine scaled by 1 + g is g', () => {
    fc.assert(
      fc.property(fc.double({ min: -0.3, max: 0.6, noNaN: true }), (share) => {
        const { gains } = compareCombinations([
          input('A', table(inventedTorque)),
          input(
            'B',
            table((speed) => (1 + share) * inventedTorque(speed)),
          ),
        ]);
        expect(gains[0]!.meanPowerRatio).toBeCloseTo(share, 12);
      }),
      { seed: 20260314, numRuns: 30 },
    );
  });

  test('of noisy sweeps is found within their scatter', () => {
    const { gains, combinations } = compareCombinations([
      input('A', swept(), swept(), swept()),
      input('B', ...[1, 2, 3].map(() => swept({ torqueAt: (speed) => 1.05 * inventedTorque(speed) }))),
    ]);
    // 650 rows a pull of 0.4 % scatter: a mean of three is good to some 0.01 %.
    expect(gains[0]!.meanPowerRatio).toBeGreaterThan(0.0495);
    expect(gains[0]!.meanPowerRatio).toBeLessThan(0.0505);
    expect(combinations[0]!.repeatSpread).toBeGreaterThan(0);
    expect(combinations[0]!.repeatSpread).toBeLessThan(0.001);
  });

  test('does not change with the order in which pulls are listed', () => {
    const [one, two, three] = [swept(), swept(), swept()];
    const changed = swept({ torqueAt: (speed) => inventedTorque(speed) + 0.01 * (speed - 4000) });
    const there = compareCombinations([input('A', one!, two!, three!), input('B', changed)]).gains[0]!;
    const back = compareCombinations([input('A', three!, one!, two!), input('B', changed)]).gains[0]!;
    expect(back.meanPower).toBeCloseTo(there.meanPower, 6);
    expect(back.largest.atRpm).toBe(there.largest.atRpm);
    there.power.forEach((value, node) => {
      if (Number.isFinite(value)) expect(back.power[node]!).toBeCloseTo(value, 6);
    });
  });

  test('turned round has the other sign', () => {
    const [a, b] = [table(inventedTorque), table((speed) => inventedTorque(speed) + 0.02 * (speed - 4550))];
    const there = compareCombinations([input('A', a), input('B', b)]).gains[0]!;
    const back = compareCombinations([input('A', a), input('B', b)], { baselineKey: 'B' }).gains[0]!;
    expect(back.meanPower).toBeCloseTo(-there.meanPower, 9);
    expect(there.crossoversRpm).toHaveLength(1);
    expect(Math.abs(there.crossoversRpm[0]! - 4550)).toBeLessThan(1);
    expect(back.crossoversRpm).toEqual(there.crossoversRpm);
    expect(there.largest.atRpm).toBe(6500);
    expect(there.smallest.power).toBe(-back.largest.power);
  });

  test('of boost comes with it, and not where the tap was moved', () => {
    const boosted = (top: number, tap: string) =>
      swept({ more: (speed) => ({ boost: top * (speed / 6500) ** 2 }) }, { places: { boostTap: tap } });
    const same = compareCombinations([
      input('A', boosted(70e3, 'plenum')),
      input('B', boosted(63e3, 'Plenum')),
    ]);
    expect(same.gains[0]!.topBoost! / (-7e3 * (6500 / 6500) ** 2)).toBeCloseTo(1, 1);
    expect(same.gains[0]!.meanBoost).toBeLessThan(-2e3);
    const moved = compareCombinations([
      input('A', boosted(70e3, 'plenum')),
      input('B', boosted(63e3, 'after the cooler')),
    ]);
    expect(moved.gains[0]).toMatchObject({ meanBoost: null, topBoost: null });
    expect(codes(moved)).toContain('boost-tap-moved');
  });
});

describe('windows and nodes', () => {
  test('the common window is what every pull covers, and averages stand on it', () => {
    const comparison = compareCombinations([
      input(
        'A',
        table(() => 300, 2500, 6000),
        table(() => 300, 3000, 6500),
      ),
      input(
        'B',
        table(() => 330, 2000, 7000),
      ),
    ]);
    expect(comparison.commonWindowRpm).toEqual([3000, 6000]);
    expect(comparison.engineSpeedRpm[0]).toBe(2000);
    expect(comparison.gains[0]!.power[0]).toBeNaN();
    expect(comparison.combinations[1]!.averages.get('torque')).toBeCloseTo(330, 9);
  });

  test('an averages window set by hand is clipped to the common one', () => {
    const inputs = [
      input(
        'A',
        table(() => 300, 2500, 6000),
      ),
      input(
        'B',
        table(() => 330, 3000, 6500),
      ),
    ];
    const clipped = compareCombinations(inputs, { averagesWindowRpm: [5000, 6500] });
    expect(clipped.averagesWindowRpm).toEqual([5000, 6000]);
    expect(codes(clipped)).toContain('averages-window-clipped');
    expect(compareCombinations(inputs, { averagesWindowRpm: [4000, 5000] }).averagesWindowRpm).toEqual([
      4000, 5000,
    ]);
    expect(codes(compareCombinations(inputs, { averagesWindowRpm: [8000, 9000] }))).toContain(
      'averages-window-missed',
    );
  });

  test('an averages window between two speeds of the comparison falls back to the common one, and says so', () => {
    const inputs = [
      input(
        'A',
        table(() => 300),
      ),
      input(
        'B',
        table(() => 330),
      ),
    ];
    const between = compareCombinations(inputs, { averagesWindowRpm: [4010, 4020] });
    expect(between.averagesWindowRpm).toEqual([2500, 6500]);
    expect(codes(between)).toContain('averages-window-empty');
    expect(between.gains[0]!.meanPowerRatio).toBeCloseTo(0.1, 12);
    expect(compareCombinations(inputs, { averagesWindowRpm: [3990, 4010] }).averagesWindowRpm).toEqual([
      3990, 4010,
    ]);
  });

  test('a pull entered twice is named, a pull like another is not', () => {
    const torque = (speed: number) => 300 + speed / 1000;
    const twice = compareCombinations([
      input('A', table(torque), table(torque)),
      input('B', table(inventedTorque)),
    ]);
    const named = twice.remarks.filter(({ code }) => code === 'entered-twice');
    expect(named).toHaveLength(1);
    expect(named[0]!.message).toContain(`"pull ${made - 2}" and "pull ${made - 1}"`);
    const alike = compareCombinations([
      input(
        'A',
        table(torque),
        table((speed) => torque(speed) * (1 + 1e-6)),
      ),
      input('B', table(inventedTorque)),
    ]);
    expect(codes(alike)).not.toContain('entered-twice');
  });

  test('a finer pull is read at the wider bins', () => {
    const comparison = compareCombinations([input('A', swept()), input('B', swept({ rowsPerSecond: 10 }))]);
    expect(comparison.binWidthRpm).toBe(100);
    expect(comparison.engineSpeedRpm.every((speed) => speed % 100 === 0)).toBe(true);
    expect(comparison.conditions.find((one) => one.id === 'bin-width')?.state).toBe('differs');
  });

  test('step tests that share their steps keep them; a step test beside a sweep is read between its rows', () => {
    expect(
      compareCombinations([
        input('A', table(inventedTorque, 2500, 6500, 250)),
        input('B', table(inventedTorque, 3000, 6000, 500)),
      ]).binWidthRpm,
    ).toBe(250);
    const mixed = compareCombinations([
      input('A', table(inventedTorque, 2500, 6500, 250)),
      input('B', swept()),
    ]);
    expect(mixed.binWidthRpm).toBe(100);
    expect(Math.abs(mixed.gains[0]!.meanPowerRatio)).toBeLessThan(0.002);
    expect(mixed.conditions.find((one) => one.id === 'kind-of-rows')?.state).toBe('differs');
  });

  test('rows too far apart leave a hole that is named and left out of the averages', () => {
    const gap = [2500, 3000, 3500, 4200, 4500, 5000];
    const comparison = compareCombinations([
      input(
        'A',
        inventedPull(
          inventedPoints(gap, () => 300),
          { id: 'gap', name: 'gap' },
        ),
      ),
      input(
        'B',
        table(() => 330),
      ),
    ]);
    expect(codes(comparison)).toEqual(expect.arrayContaining(['rows-too-far-apart', 'hole-in-window']));
    const at = (speed: number) => comparison.gains[0]!.power[comparison.engineSpeedRpm.indexOf(speed)];
    expect(at(3800)).toBeNaN();
    expect(at(3500)).not.toBeNaN();
    expect(comparison.gains[0]!.meanTorque).toBeCloseTo(30, 9);
  });

  test('pulls that do not overlap make no gain and say their ranges', () => {
    const comparison = compareCombinations([
      input(
        'A',
        table(() => 300, 2000, 3000),
      ),
      input(
        'B',
        table(() => 300, 4000, 5000),
      ),
    ]);
    expect(comparison).toMatchObject({ commonWindowRpm: null, gains: [] });
    expect(comparison.remarks.find((one) => one.code === 'no-common-window')?.message).toContain(
      '2,000-3,000 rpm',
    );
  });
});

describe('one standard for all', () => {
  const carried = (standard: Pull['carried']['standard'], factor: number | null) => ({
    carried: { standard, factor },
  });

  test('a pull without weather takes all of them to observed', () => {
    const comparison = compareCombinations([
      input(
        'A',
        table(() => 300, 2500, 6500, 100, { weather: null }),
      ),
      input(
        'B',
        table(() => 306, 2500, 6500, 100, carried('sae-j1349', 1.02)),
      ),
    ]);
    expect(comparison.correction).toMatchObject({
      asked: 'sae-j1349',
      standard: 'observed',
      factor: 1,
      reached: false,
    });
    expect(comparison.gains[0]!.meanPower).toBeCloseTo(0, 6);
    expect(comparison.remarks[0]).toMatchObject({ code: 'compared-as-observed', level: 'caution' });
    expect(comparison.remarks[0]!.message).toContain('no weather');
  });

  test('a factor that is not known leaves all as recorded, and a mixture is never silent', () => {
    const comparison = compareCombinations([
      input(
        'A',
        table(() => 300),
      ),
      input(
        'B',
        table(() => 312, 2500, 6500, 100, { name: 'printed sheet', ...carried('sae-j607', null) }),
      ),
    ]);
    expect(comparison.correction).toMatchObject({ standard: 'unknown', reached: false });
    expect(comparison.gains[0]!.meanTorque).toBeCloseTo(12, 9);
    expect(comparison.remarks[0]!.code).toBe('compared-in-different-standards');
    expect(comparison.remarks[0]!.message).toContain('printed sheet');
    expect(comparison.conditions.find((one) => one.id === 'standard')?.state).toBe('differs');
  });

  test('the same standard on both sides stays it, though neither can reach the one asked for', () => {
    const sheet = carried('sae-j607', null);
    const comparison = compareCombinations([
      input(
        'A',
        table(() => 300, 2500, 6500, 100, sheet),
      ),
      input(
        'B',
        table(() => 312, 2500, 6500, 100, sheet),
      ),
    ]);
    expect(comparison.correction).toMatchObject({ standard: 'sae-j607', reached: false });
    expect(codes(comparison)).toContain('compared-as-recorded');
  });
});

describe('pulls that are read differently', () => {
  const plain = swept({ torqueNoise: 0 });
  const read = (treatment: Partial<Pull['treatment']>, changes: Partial<Pull> = {}): Pull => ({
    ...plain,
    ...changes,
    id: 'read',
    treatment: { ...PLAIN_TREATMENT, ...treatment },
  });
  const stateOf = (id: string, other: Pull) =>
    compareCombinations([input('A', plain), input('B', other)]).conditions.find((one) => one.id === id);

  test('the common width wins over the widths set on the pulls, the widest of all', () => {
    const comparison = compareCombinations([
      input('A', read({ binWidthRpm: 50 })),
      input('B', { ...read({ binWidthRpm: 250 }), id: 'wide' }),
    ]);
    expect(comparison.binWidthRpm).toBe(250);
    expect(comparison.gains[0]!.meanPower).toBe(0);
    expect(stateOf('bin-width', read({ binWidthRpm: 250 }))?.state).toBe('differs');
  });

  test('windows set by hand, lags and inertia differ; where none is touched nothing is said of them', () => {
    const known = { sweep: { momentOfInertia: 0.4, inertiaCompensated: 'no' } } as const;
    expect(stateOf('window-set', read({ windowRpm: [3000, 6000] }))).toMatchObject({
      state: 'differs',
      values: { A: 'found', B: 'set by hand, 3,000-6,000 rpm' },
    });
    expect(stateOf('lags', read({ lags: { torque: 0.1 } }))).toMatchObject({
      state: 'differs',
      values: { A: 'none', B: 'Torque 0.1 s' },
    });
    expect(stateOf('inertia', read({ addInertia: true }, known))?.values.B).toBe('added here');
    expect(stateOf('window-set', read({}))).toBeUndefined();
    expect(stateOf('lags', read({ lags: { boost: 0.1 } }))).toBeUndefined();
  });
});

describe('conditions', () => {
  const warm = (oilF: number, lambda = 0.87): Channel[] => {
    const { channels } = inventedSweep({
      torqueAt: inventedTorque,
      more: () => ({ oilTemperature: (oilF + 459.67) / 1.8, lambda }),
    });
    return channels;
  };
  const stateOf = (a: Pull, b: Pull, id: string) =>
    compareCombinations([input('A', a), input('B', b)]).conditions.find((one) => one.id === id)?.state;

  test('oil more than 10 °F apart differs, less is alike, not measured is unknown', () => {
    const pull = (oilF: number) => inventedPull(warm(oilF), { id: `oil ${oilF}` });
    expect(stateOf(pull(180), pull(189), 'oil-start')).toBe('alike');
    expect(stateOf(pull(180), pull(191), 'oil-start')).toBe('differs');
    expect(stateOf(pull(180), swept(), 'oil-start')).toBe('unknown');
  });

  test('mixture more than 0.03 apart differs', () => {
    const pull = (lambda: number) => inventedPull(warm(180, lambda), { id: `lambda ${lambda}` });
    expect(stateOf(pull(0.85), pull(0.87), 'lambda')).toBe('alike');
    expect(stateOf(pull(0.84), pull(0.88), 'lambda')).toBe('differs');
  });

  test('sweep rates more than a fifth apart differ, and so do directions', () => {
    expect(stateOf(swept({ rate: 300 }), swept({ rate: 330 }), 'sweep-rate')).toBe('alike');
    expect(stateOf(swept({ rate: 300 }), swept({ rate: 400 }), 'sweep-rate')).toBe('differs');
    const falling = Array.from({ length: 600 }, (_, row) => 6500 - 6 * row);
    const down = inventedPull([
      inventedChannel(
        'time',
        falling.map((_, row) => row * 0.02),
      ),
      inventedChannel('engineSpeed', falling),
      inventedChannel('torque', falling.map(inventedTorque)),
    ]);
    expect(stateOf(swept(), down, 'direction')).toBe('differs');
  });

  test('days, set-ups and notes of the tune are held against each other in words', () => {
    const noted = (day: string, setUpId: string, spark: string) =>
      swept({}, { recordedAt: `2026-03-${day}T10:00:00+01:00`, setUpId, tune: { sparkAdvance: spark } });
    const { conditions } = compareCombinations([
      input('A', noted('14', 'x', '30 °')),
      input('B', noted('16', 'y', '30°')),
    ]);
    const of = (id: string) => conditions.find((one) => one.id === id);
    expect(of('day')).toMatchObject({ state: 'differs', values: { A: '2026-03-14', B: '2026-03-16' } });
    expect(of('set-up')).toMatchObject({ state: 'differs', values: { A: 'set-up 1', B: 'set-up 2' } });
    expect(of('tune-spark')?.state).toBe('alike');
    expect(of('cell')).toMatchObject({ state: 'unknown', values: { A: 'not noted', B: 'not noted' } });
    for (const condition of conditions) expect(condition.why.length).toBeGreaterThan(20);
  });
});

describe('pulls without a curve', () => {
  test('a remembered peak stands beside the others without a gain', () => {
    const remembered = inventedPull([], {
      id: 'remembered',
      form: 'summary',
      summary: { peakPower: 240e3, peakPowerRpm: 6000, peakTorque: null, peakTorqueRpm: null },
      carried: { standard: 'unknown', factor: null },
    });
    const comparison = compareCombinations([input('A', remembered), input('B', swept())]);
    expect(comparison.gains).toEqual([]);
    expect(comparison.combinations[0]!.peakPower).toMatchObject({ value: 240e3, atRpm: 6000 });
    expect(comparison.combinations[1]!.averages.get('power')).toBeGreaterThan(100e3);
    expect(codes(comparison)).toContain('pull-without-curve');
  });

  test('nothing at all is compared without an exception', () => {
    expect(compareCombinations([])).toMatchObject({ gains: [], commonWindowRpm: null, combinations: [] });
  });
});
