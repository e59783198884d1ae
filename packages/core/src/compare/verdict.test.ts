import { describe, expect, test } from 'vitest';
import { defaultRecipe, type Pull, viewPull } from '../pull/index.ts';
import { inventedPoints, inventedPull, inventedTorque } from '../pull/invented-pull.testing.ts';
import { inventedHistory, spread } from '../scatter/history.testing.ts';
import { compareCombinations } from './compare-combinations.ts';
import type { ComparedInput, CompareOptions } from './model.ts';

const recipe = defaultRecipe('sae-j1349');
const HISTORY = inventedHistory();
const SPEEDS = Array.from({ length: 41 }, (_, row) => 2500 + 100 * row);

let made = 0;
/** A step test in the weather of the standard, all of its torque times exp(level). */
function pull(level: number, changes: Partial<Pull> = {}, torqueAt = inventedTorque): Pull {
  made += 1;
  return inventedPull(
    inventedPoints(SPEEDS, (speed) => torqueAt(speed) * Math.exp(level)),
    { id: `pull ${made}`, name: `pull ${made}`, cell: 'north', ...changes },
  );
}
const at = (clock: string, setUpId: string | null = null): Partial<Pull> => ({
  recordedAt: `2026-03-14T${clock}:00+01:00`,
  setUpId,
});
const input = (key: string, ...pulls: Pull[]): ComparedInput => ({
  key,
  combinationId: key,
  pulls: pulls.map((one) => ({ pull: one, view: viewPull(one, recipe) })),
});
const compared = (inputs: ComparedInput[], options: CompareOptions = {}) =>
  compareCombinations(inputs, { history: HISTORY, ...options });
const codes = (comparison: ReturnType<typeof compareCombinations>) =>
  comparison.remarks.map(({ code }) => code);

test('without a history there is no band and no verdict, and the gain is the same to the bit', () => {
  const inputs = [input('A', pull(0), pull(0.001)), input('B', pull(0.01), pull(0.012))];
  const bare = compareCombinations(inputs).gains[0]!;
  const judged = compared(inputs).gains[0]!;
  expect(bare).toMatchObject({ band: null, verdict: null });
  expect(judged.meanPower).toBe(bare.meanPower);
  expect([...judged.power]).toEqual([...bare.power]);
  expect(judged.verdict).not.toBeNull();
});

test('power that is not above zero in the averages has no band, and the remark names pull and speed', () => {
  const dragged = pull(0, {}, (speed) => (speed === 3000 ? -5 : inventedTorque(speed)));
  const inputs = [input('A', pull(0)), input('B', dragged)];
  const comparison = compared(inputs);
  expect(comparison.gains[0]).toMatchObject({ band: null, verdict: null });
  const told = comparison.remarks.find(({ code }) => code === 'power-not-above-zero')!;
  expect(told.message).toContain(`"${dragged.name}"`);
  expect(told.message).toContain('3,000');
  // Outside the averages it does not matter.
  expect(compared(inputs, { averagesWindowRpm: [3500, 6000] }).gains[0]!.band).not.toBeNull();
  // No share of what is not above zero.
  const lost = pull(0, {}, () => -50);
  expect(compared([input('A', lost), input('B', pull(0))]).gains[0]!.meanPowerRatio).toBeNaN();
});

test('the word follows the bands shown, however near they come to zero', () => {
  // The end of a band is brought as near to zero as it gets: there logarithm of mean and mean of logarithms tell different signs.
  const levels = [
    [0.006, -0.006],
    [0.0001, -0.0001],
  ] as const;
  const of = (gain: number) =>
    compared(
      [
        input('A', ...levels[0].map((level) => pull(level))),
        input('B', ...levels[1].map((level) => pull(gain + level))),
      ],
      { keptOnTheBrake: ['B'] },
    ).gains[0]!;
  let [low, high] = [0, 0.05];
  for (let halving = 0; halving < 45; halving++) {
    const middle = (low + high) / 2;
    const { band, verdict } = of(middle);
    expect(verdict!.word === 'clear').toBe(band!.meanPower[0] > 0 || band!.meanPower[1] < 0);
    if (band!.meanPower[0] > 0) high = middle;
    else low = middle;
  }
  expect(of(low * 0.999).verdict!.word).toBe('likely');
});

describe('bands in watts', () => {
  const inputs = [input('A', pull(0), pull(0)), input('B', pull(0.02), pull(0.02))];
  const comparison = compared(inputs, { keptOnTheBrake: ['B'] });
  const gain = comparison.gains[0]!;
  const band = gain.band!;

  test('are the changed average times exp(+-half) less the baseline', () => {
    const [before, after] = comparison.combinations.map(({ averages }) => averages.get('power')!) as [
      number,
      number,
    ];
    const { standardError, critical } = band.scatter.gains[0]!;
    // Two against two of 0.4 %: the repeats agree exactly, so 0.4 % sqrt(20 / 22), t with 22 degrees 2.0739.
    expect(standardError).toBeCloseTo(0.004 * Math.sqrt(20 / 22), 9);
    expect(critical).toBeCloseTo(2.0739, 3);
    const half = critical * standardError;
    expect(band.meanPower[0]).toBeCloseTo(after * Math.exp(-half) - before, 6);
    expect(band.meanPower[1]).toBeCloseTo(after * Math.exp(half) - before, 6);
    expect(band.meanPowerRatio[0]).toBeCloseTo(band.meanPower[0] / before, 12);
    expect(band.likelyPower[0]).toBeGreaterThan(band.meanPower[0]);
    expect(band.likelyPower[1]).toBeLessThan(band.meanPower[1]);
  });

  test('stand at every node, the one for all speeds outside the one for one', () => {
    expect(band.pointwise.low).toHaveLength(comparison.engineSpeedRpm.length);
    gain.power.forEach((power, node) => {
      const [low, high] = [band.pointwise.low[node]!, band.pointwise.high[node]!];
      expect(low).toBeLessThan(power);
      expect(high).toBeGreaterThan(power);
      expect(band.simultaneous.low[node]).toBeLessThan(low);
      expect(band.simultaneous.high[node]).toBeGreaterThan(high);
    });
  });

  test('say with how many pulls and set-ups, and for which gain that matters', () => {
    expect(gain.verdict).toMatchObject({
      word: 'clear',
      worthwhileRatio: 0.01,
      pulls: { baseline: 2, changed: 2 },
      setUps: { baseline: 1, changed: 1 },
    });
    expect(compared(inputs, { worthwhile: 0.05 }).gains[0]!.verdict!.worthwhileRatio).toBe(0.05);
  });

  test('leave out what is outside of the averages window', () => {
    const narrow = compared(inputs, { averagesWindowRpm: [4000, 5000] });
    const { low } = narrow.gains[0]!.band!.pointwise;
    narrow.engineSpeedRpm.forEach((speed, node) => {
      expect(Number.isFinite(low[node]!)).toBe(speed >= 4000 && speed <= 5000);
    });
  });
});

describe('what pulls share', () => {
  const apart = (setUps: [string, string], options: CompareOptions = {}) =>
    compared(
      [
        input('A', pull(0, at('09:00', setUps[0])), pull(0, at('09:15', setUps[0]))),
        input('B', pull(0, at('11:00', setUps[1])), pull(0, at('11:15', setUps[1]))),
      ],
      options,
    );

  test('a change on the brake has the set-up of the baseline, a cam its own', () => {
    const kept = apart(['base', 'pulley'], { keptOnTheBrake: ['B'] });
    const fitted = apart(['base', 'cam']);
    expect(kept.gains[0]!.band!.scatter.gains[0]!.parts.setUp).toBe(0);
    expect(fitted.gains[0]!.band!.scatter.gains[0]!.parts.setUp).toBeCloseTo(2 * 0.005 ** 2, 12);
    expect(codes(fitted)).toContain('set-up-in-band');
    expect(codes(kept)).not.toContain('set-up-in-band');
  });

  test('blocks two hours apart carry the drift of the clock, and it is said', () => {
    const { gains, remarks } = apart(['base', 'base']);
    const scatter = gains[0]!.band!.scatter;
    expect(scatter.drift.handling).toBe('carried');
    expect(scatter.gains[0]!.parts.drift).toBeCloseTo((2 * 0.004) ** 2, 12);
    expect(remarks.find(({ code }) => code === 'drift-in-band')!.message).toContain('A pull of A after B');
  });

  test('A-A-B-A in a falling cell: the drift is out of the gain, by how much is told', () => {
    const falling = (gain: number, clock: string, hours: number) =>
      pull(gain - 0.02 * hours, at(clock, 'one'));
    const comparison = compared([
      input('A', falling(0, '09:00', 0), falling(0, '09:30', 0.5), falling(0, '11:00', 2)),
      input('B', falling(0.01, '10:30', 1.5)),
    ]);
    const gain = comparison.gains[0]!;
    expect(gain.band!.scatter.gains[0]!.logGain).toBeCloseTo(0.01, 9);
    // Means of powers, not of logarithms: they differ by half the variance.
    expect(gain.meanPowerRatio).toBeCloseTo(Math.exp(0.01) - 1, 3);
    const told = comparison.remarks.find(({ code }) => code === 'drift-taken-out')!;
    expect(told.message).toContain('−1.98 % an hour');
    // B stands 1.5 h in, the mean of A at 0.83 h: 0.67 h x 2 %.
    expect(told.message).toContain('1.34 %');
    gain.power.forEach((power, node) => {
      expect(gain.band!.pointwise.low[node]).toBeLessThan(power);
    });
  });

  test('order stands for time where nobody wrote the clock', () => {
    const placed = (level: number, orderInSession: number) =>
      pull(level, { sessionId: 'friday', orderInSession, setUpId: 'one' });
    const comparison = compared([
      input('A', placed(0, 1), placed(0, 2)),
      input('B', placed(0.01, 3), placed(0.01, 4)),
    ]);
    expect(comparison.gains[0]!.band!.scatter.gains[0]!.parts.drift).toBeCloseTo((0.5 * 0.004) ** 2, 12);
    expect(codes(comparison)).toContain('timed-by-order');
  });

  test('another day and another cell are in the band, with a caution', () => {
    const comparison = compared([
      input('A', pull(0, { recordedAt: '2026-03-14T10:00:00Z', cell: 'north' })),
      input('B', pull(0, { recordedAt: '2026-03-16T10:00:00Z', cell: 'south' })),
    ]);
    const { parts } = comparison.gains[0]!.band!.scatter.gains[0]!;
    expect(parts.day).toBeCloseTo(2 * 0.009 ** 2, 12);
    expect(parts.cell).toBeCloseTo(2 * 0.02 ** 2, 12);
    expect(codes(comparison)).toEqual(
      expect.arrayContaining(['cells-in-band', 'set-up-in-band', 'single-pull']),
    );
  });

  test('planned looks and scatter beyond history are said', () => {
    const wild = [0.03, -0.03];
    const comparison = compared(
      [input('A', ...wild.map((level) => pull(level))), input('B', ...wild.map((level) => pull(level)))],
      { looksAt: [4, 8] },
    );
    expect(codes(comparison)).toEqual(expect.arrayContaining(['history-set-aside', 'planned-look']));
    expect(comparison.gains[0]!.verdict!.word).toBe('within-noise');
  });
});

describe('highest figures', () => {
  test('two tops: their gain has the scatter of the average, of one speed and of both fits', () => {
    const comparison = compared([input('A', pull(0)), input('B', pull(0.02))], {
      keptOnTheBrake: ['B'],
      history: inventedHistory({
        pull: spread(0.004, 1e9),
        within: { ...spread(0.003, 1e9), lengthRpm: 300 },
      }),
    });
    const [before, after] = comparison.combinations.map(({ peakPower }) => peakPower!.value) as [
      number,
      number,
    ];
    const { peakPower } = comparison.gains[0]!.band!;
    expect(peakPower!.gain).toBeCloseTo(after - before, 6);
    // Nearly exact curves: 1.96 sqrt(2 (0.4 %² + 0.3 %²)) and hardly anything of the fits.
    const half = 1.96 * Math.SQRT2 * 0.005;
    expect(peakPower!.high / (after * Math.exp(half) - before)).toBeCloseTo(1, 2);
    const [low, high] = comparison.combinations[0]!.peakPowerBand!;
    expect(high / (before * Math.exp(half / Math.SQRT2))).toBeCloseTo(1, 3);
    expect(low).toBeLessThan(before);
  });

  test('a top against a curve still climbing has none; two that climb to one speed have', () => {
    const climbing = () => 300;
    const mixed = compared([input('A', pull(0)), input('B', pull(0, {}, climbing))]);
    expect(mixed.gains[0]!.band!.peakPower).toBeNull();
    const both = compared([input('A', pull(0, {}, climbing)), input('B', pull(0.02, {}, climbing))]);
    expect(both.gains[0]!.band!.peakPower!.low).toBeLessThan(both.gains[0]!.band!.peakPower!.gain);
  });

  test('a remembered peak stands against a curve with what it cannot say', () => {
    const remembered = (changes: Partial<Pull> = {}) =>
      inventedPull([], {
        id: 'remembered',
        name: 'remembered',
        form: 'summary',
        cell: 'north',
        summary: { peakPower: 220e3, peakPowerRpm: 6000, peakTorque: null, peakTorqueRpm: null },
        ...changes,
      });
    const against = (changes: Partial<Pull>, options: CompareOptions = {}) =>
      compared([input('A', remembered(changes)), input('B', pull(0))], options).peakGains[0]!;
    const observed = against({});
    const unknown = against({ carried: { standard: 'unknown', factor: null } });
    expect(observed.gain).toBeCloseTo(unknown.gain, 6);
    // 1 % of reading, two pulls of 0.4 %, two speeds of 0.3 %, set-up and day not known to be one: 0.5 % and 0.9 % twice.
    const deviation = Math.sqrt(0.01 ** 2 + 2 * (0.004 ** 2 + 0.003 ** 2 + 0.005 ** 2 + 0.009 ** 2));
    const after = 220e3 + observed.gain;
    const half = Math.log((observed.high - observed.gain) / after + 1);
    expect(half).toBeGreaterThan(1.96 * deviation);
    // Student's t with six degrees of freedom, the fewest of the parts.
    expect(half).toBeLessThan(2.447 * deviation);
    expect(Math.log((unknown.high - unknown.gain) / after + 1)).toBeCloseTo(half + 0.04, 6);
    expect(unknown.why).toContain('4 %');
    expect(observed.why).not.toContain('4 %');
    expect(observed.why).toContain('nothing of the average');
    expect(compareCombinations([input('A', remembered()), input('B', pull(0))]).peakGains).toEqual([]);
    expect(against({ cell: 'south' }).high).toBeGreaterThan(observed.high);
  });
});

test('a survey claims no gain, but its highest figures have bands and its pulls their trends', () => {
  const comparison = compared(
    [input('A', pull(0), pull(-0.01), pull(-0.02), pull(-0.03)), input('B', pull(0.1))],
    { baselineKey: null },
  );
  expect(comparison.gains).toEqual([]);
  expect(comparison.combinations[1]!.peakPowerBand).not.toBeNull();
  expect(comparison.trends).toMatchObject([{ group: 'A', pulls: 4, state: 'seen' }]);
  expect(codes(comparison)).not.toContain('single-pull');
});
