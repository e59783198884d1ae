import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { normalNoise } from '../pull/invented-pull.testing.ts';
import { compareArrays } from './compare-arrays.ts';
import { inventedHistory, spread } from './history.testing.ts';
import type { PullArray, ScatterComparison, ScatterOptions } from './model.ts';

const SPEEDS = Float64Array.from({ length: 31 }, (_, node) => 3000 + 100 * node);

/** A pull whose power is everywhere the shape's times exp(level). */
function flat(group: string, level: number, changes: Partial<PullArray> = {}): PullArray {
  return {
    engineSpeedRpm: SPEEDS,
    power: SPEEDS.map((speed) => 60 * speed * Math.exp(level)),
    group,
    setUp: 'one',
    session: 'monday',
    cell: null,
    hours: null,
    ...changes,
  };
}

function compared(pulls: PullArray[], options: Partial<ScatterOptions> = {}): ScatterComparison {
  const result = compareArrays(pulls, { history: inventedHistory(), baseline: 'A', ...options });
  if (!result.ok) throw new Error(result.remarks.map(({ message }) => message).join(' '));
  return result.value;
}
const gainOf = (pulls: PullArray[], options: Partial<ScatterOptions> = {}) =>
  compared(pulls, options).gains[0]!;

describe('worked by hand', () => {
  test('two groups of three: the t interval with the moderated variance', () => {
    const levels = [0.001, -0.002, 0.001];
    const { gains, spreads } = compared([
      ...levels.map((level) => flat('A', level)),
      ...levels.map((level) => flat('B', level + 0.01)),
    ]);
    // Squares 6e-6 of each group: 12e-6 of 4 degrees; with 0.004² of 20: (20 × 16e-6 + 12e-6) / 24.
    const variance = (20 * 16e-6 + 12e-6) / 24;
    expect(spreads.pull.sigma).toBeCloseTo(Math.sqrt(variance), 12);
    expect(spreads.pull.degreesOfFreedom).toBe(24);
    const [gain] = gains;
    expect(gain!.logGain).toBeCloseTo(0.01, 12);
    expect(gain!.standardError).toBeCloseTo(Math.sqrt((variance * 2) / 3), 12);
    expect(gain!.degreesOfFreedom).toBeCloseTo(24, 9);
    // Student's t at 0.975 with 24 degrees of freedom: 2.0639 (any table, from memory).
    expect(gain!.critical).toBeCloseTo(2.0639, 4);
    expect(gain!.low).toBeCloseTo(Math.exp(0.01 - 2.0639 * gain!.standardError) - 1, 6);
    expect(gain!.high).toBeCloseTo(Math.exp(0.01 + 2.0639 * gain!.standardError) - 1, 6);
    // 1.3178 at 0.9, 1.7109 at 0.95.
    expect(gain!.likelyLow).toBeCloseTo(Math.exp(0.01 - 1.3178 * gain!.standardError) - 1, 6);
    expect(gain!.noDifferenceLargerThan).toBeCloseTo(Math.exp(0.01 + 1.7109 * gain!.standardError) - 1, 6);
    expect(gain!.verdict).toBe('clear');
    expect([...gain!.weights]).toEqual([-1 / 3, -1 / 3, -1 / 3, 1 / 3, 1 / 3, 1 / 3]);
  });

  test('one pull against one rests on history alone: sqrt 2 of it', () => {
    const gain = gainOf([flat('A', 0), flat('B', 0.003)]);
    expect(gain.standardError).toBeCloseTo(Math.SQRT2 * 0.004, 12);
    expect(gain.degreesOfFreedom).toBeCloseTo(20, 9);
    // t at 0.975 with 20: 2.0860.
    expect(gain.critical).toBeCloseTo(2.086, 3);
    expect(gain.verdict).toBe('within-noise');
  });

  test('A-B-A and A-B-B-A take a straight drift out to the last digit', () => {
    const drifting = (group: string, gain: number, hours: number) =>
      flat(group, gain - 0.02 * hours, { hours });
    const aba = compared([drifting('A', 0, 0), drifting('B', 0.01, 1), drifting('A', 0, 2)]);
    expect(aba.gains[0]!.logGain).toBeCloseTo(0.01, 12);
    expect([...aba.gains[0]!.weights]).toEqual([-0.5, 1, -0.5]);
    expect(aba.drift.handling).toBe('taken-out');
    expect(aba.drift.perHour).toBeCloseTo(Math.exp(-0.02) - 1, 12);
    expect(aba.gains[0]!.parts.drift).toBe(0);
    const abba = compared([
      drifting('A', 0, 0),
      drifting('B', 0.01, 0.3),
      drifting('B', 0.01, 0.6),
      drifting('A', 0, 0.9),
    ]);
    expect(abba.gains[0]!.logGain).toBeCloseTo(0.01, 12);
    expect([...abba.gains[0]!.weights]).toEqual([-0.5, 0.5, 0.5, -0.5]);
    // Times that are not in step: B nearer to the first A. Its weights follow the straight line between them.
    const uneven = gainOf([drifting('A', 0, 0), drifting('B', 0.01, 0.5), drifting('A', 0, 2)]);
    expect(uneven.logGain).toBeCloseTo(0.01, 12);
    expect(uneven.weights[0]).toBeCloseTo(-0.75, 12);
    expect(uneven.weights[2]).toBeCloseTo(-0.25, 12);
  });

  test('blocks carry the squared difference of mean times by the variance of the slope', () => {
    const at = (group: string, hours: number) => flat(group, 0, { hours });
    const { gains, drift } = compared([at('A', 0), at('A', 0.25), at('B', 1), at('B', 1.25)]);
    expect(gains[0]!.parts.drift).toBeCloseTo(1 ** 2 * 0.004 ** 2, 15);
    expect(drift.handling).toBe('carried');
    // Pulls all at one time have no drift to carry.
    expect(compared([at('A', 1), at('B', 1)]).drift).toEqual({ handling: 'none', perHour: null });
  });

  test('a shared set-up, day and cell cancel; each of their own counts twice', () => {
    const shared = gainOf([flat('A', 0), flat('B', 0)]);
    expect(shared.parts).toMatchObject({ setUp: 0, day: 0, cell: 0 });
    const own = gainOf([flat('A', 0, { setUp: 'one' }), flat('B', 0, { setUp: 'two' })]);
    expect(own.parts.setUp).toBeCloseTo(2 * 0.005 ** 2, 15);
    const unlabelled = gainOf([flat('A', 0, { setUp: null }), flat('B', 0, { setUp: null })]);
    expect(unlabelled.parts.setUp).toBeCloseTo(2 * 0.005 ** 2, 15);
    const far = gainOf([
      flat('A', 0, { cell: 'north', session: 'monday', setUp: 'one' }),
      flat('B', 0, { cell: 'south', session: 'tuesday', setUp: 'two' }),
    ]);
    expect(far.parts.day).toBeCloseTo(2 * 0.009 ** 2, 15);
    expect(far.parts.cell).toBeCloseTo(2 * 0.02 ** 2, 15);
    // Degrees of freedom 20, 8, 6, 4: the 97.5 % point of the sum is that of Student's t with 4.465 (twenty times a million
    // draws with NumPy, standard error 0.0009 of a point of 2.6661).
    expect(Math.abs(far.degreesOfFreedom / 4.465 - 1)).toBeLessThan(0.01);
  });

  test('two set-ups of a combination halve its part, whatever the pulls in each', () => {
    const known = inventedHistory({ pull: spread(1e-5, 1e6), setUp: spread(0.005, 1e6) });
    const gain = gainOf(
      [
        flat('A', 0, { setUp: 'one' }),
        flat('B', 0.01, { setUp: 'two' }),
        flat('B', 0.01, { setUp: 'two' }),
        flat('B', 0.01, { setUp: 'two' }),
        flat('B', 0.012, { setUp: 'three' }),
      ],
      { history: known },
    );
    // Pulls that hardly scatter: the mean of the two set-ups, not of the four pulls.
    expect(gain.logGain).toBeCloseTo(0.011, 6);
    expect(gain.parts.setUp).toBeCloseTo(1.5 * 0.005 ** 2, 8);
  });

  test('set-ups fitted anew scatter as the moments say', () => {
    const history = inventedHistory({ pull: spread(0.001, 1e9), setUp: spread(0.005, 4) });
    const pulls = [0, 0.006, -0.006].flatMap((offset, setUp) =>
      [0, 0].map((level) => flat('A', offset + level, { setUp: `a${setUp}` })),
    );
    const { spreads } = compared([...pulls, flat('B', 0, { setUp: 'b' })], { history });
    // Mean square of three means of two: 36e-6; less 1e-6 / 2 of the pulls.
    expect(spreads.setUp.fromRepeats!.degreesOfFreedom).toBe(2);
    expect(spreads.setUp.fromRepeats!.sigma).toBeCloseTo(Math.sqrt(36e-6 - 0.5e-6), 8);
    // Of what history expects to be seen, 25.5e-6, 25e-6 is of set-ups: the two degrees of freedom tell by that share squared.
    const told = 2 * (25 / 25.5) ** 2;
    expect(spreads.setUp.sigma).toBeCloseTo(Math.sqrt((4 * 25e-6 + told * 35.5e-6) / (4 + told)), 8);
    expect(spreads.setUp.degreesOfFreedom).toBeCloseTo(4 + told, 6);
  });

  test('days of one combination, each in its own set-up', () => {
    const history = inventedHistory({
      pull: spread(0.001, 1e9),
      setUp: spread(0.002, 1e9),
      day: spread(0.009, 4),
    });
    const { spreads } = compared(
      [0.01, -0.01].map((level, day) => flat('A', level, { setUp: `a${day}`, session: `day ${day}` })),
      { history },
    );
    // One difference of 2 %: mean square 2e-4, of which the pulls are 1e-6 and the set-ups 4e-6.
    expect(spreads.day.fromRepeats!.sigma).toBeCloseTo(Math.sqrt(2e-4 - 5e-6), 8);
    expect(spreads.day.fromRepeats!.degreesOfFreedom).toBe(1);
  });

  test('what is stated as none stays none', () => {
    const none = spread(0, 1e9, 'stated');
    const gain = gainOf(
      [
        flat('A', 0, { setUp: 'one', session: 'monday', cell: 'north' }),
        flat('A', 0.01, { setUp: 'two', session: 'tuesday', cell: 'north' }),
        flat('B', 0, { setUp: 'three', session: 'friday', cell: 'south' }),
      ],
      { history: inventedHistory({ setUp: none, day: none, cell: none }) },
    );
    expect(gain.parts).toMatchObject({ setUp: 0, day: 0, cell: 0 });
  });

  test('several gains over one baseline are held against the largest t', () => {
    const history = inventedHistory({ pull: spread(0.004, Number.POSITIVE_INFINITY) });
    const pulls = ['A', 'B', 'C'].flatMap((group) => [0, 0].map((level) => flat(group, level)));
    const { gains } = compared(pulls, { history });
    expect(gains.map(({ group }) => group)).toEqual(['B', 'C']);
    // Dunnett 1964, two-sided 5 %, infinite degrees of freedom: 2.21 for two, 2.35 for three (from memory).
    expect(gains[0]!.critical).toBeCloseTo(2.21, 2);
    const more = compared([...pulls, flat('D', 0), flat('D', 0)], { history });
    expect(more.gains[2]!.critical).toBeCloseTo(2.35, 2);
    expect(more.gains[0]!.weights[6]).toBe(0);
  });

  test('repeats that contradict history stand alone', () => {
    const levels = [0.02, -0.02];
    const { spreads, gains, fromHistory } = compared([
      ...levels.map((level) => flat('A', level)),
      ...levels.map((level) => flat('B', level)),
    ]);
    // Squares 16e-4 of 2 degrees, which count as 3 where they stand alone.
    expect(spreads.pull).toMatchObject({ historySetAside: true, degreesOfFreedom: 3 });
    expect(spreads.pull.sigma).toBeCloseTo(Math.sqrt(8e-4), 12);
    // t at 0.975 with 3: 3.1824.
    expect(gains[0]!.critical).toBeCloseTo(3.1824, 3);
    expect(fromHistory).toBe(false);
  });
});

describe('the curve', () => {
  test('its bands: the average and one speed, for one speed and for all', () => {
    const { gains, spreads } = compared([flat('A', 0), flat('B', 0.01)], {
      history: inventedHistory({
        pull: spread(0.004, 1e9),
        within: { ...spread(0.003, 1e9), lengthRpm: 300 },
      }),
    });
    const { curve } = gains[0]!;
    // No repeats: sqrt(2 (0.4 %² + 0.3 %²)) = 0.5 % x sqrt 2, times 1.96.
    expect(spreads.within.fromRepeats).toBeNull();
    curve.pointwise.forEach((half) => {
      expect(half).toBeCloseTo(1.959964 * 0.005 * Math.SQRT2, 7);
    });
    expect(curve.criticalSimultaneous).toBeGreaterThan(curve.criticalPointwise);
    curve.logGain.forEach((gain) => {
      expect(gain).toBeCloseTo(0.01, 12);
    });
  });

  test('one scatter of single speeds is found from the repeats', () => {
    const noise = normalNoise(11);
    const rough = (group: string) => {
      const pull = flat(group, 0);
      return { ...pull, power: Float64Array.from(pull.power, (power) => power * Math.exp(0.006 * noise())) };
    };
    const { spreads } = compared(
      [1, 2, 3, 4, 5, 6].flatMap(() => [rough('A'), rough('B')]),
      {
        history: inventedHistory({ within: { ...spread(0.006, 0.001), lengthRpm: 1 } }),
      },
    );
    // 12 x 31 independent figures of 0.6 %: their deviation is known to 4 %.
    expect(spreads.within.fromRepeats!.degreesOfFreedom).toBeCloseTo(10 * 31, 6);
    expect(Math.abs(spreads.within.sigma / 0.006 - 1)).toBeLessThan(0.15);
  });

  test('is clear where it is far from zero, and crosses with a stretch about it', () => {
    const tilted = flat('B', 0);
    const power = SPEEDS.map((speed, node) => tilted.power[node]! * Math.exp((4e-2 * (speed - 4500)) / 1500));
    const { clearRanges, crossovers, verdict } = gainOf([
      flat('A', 0),
      flat('A', 0),
      { ...tilted, power },
      { ...tilted, power },
    ]);
    expect(verdict).toBe('within-noise');
    expect(clearRanges.map(({ sign }) => sign)).toEqual([-1, 1]);
    expect(clearRanges[0]!.fromRpm).toBe(3000);
    expect(clearRanges[1]!.toRpm).toBe(6000);
    expect(crossovers).toHaveLength(1);
    const [{ atRpm, lowRpm, highRpm }] = crossovers as [(typeof crossovers)[0]];
    expect(Math.abs(atRpm - 4500)).toBeLessThan(1);
    expect(lowRpm).toBeLessThan(atRpm);
    expect(highRpm).toBeGreaterThan(atRpm);
    // The band for all speeds is the wider: what it calls clear lies outside of the stretch.
    expect(clearRanges[0]!.toRpm).toBeLessThan(lowRpm);
    expect(clearRanges[1]!.fromRpm).toBeGreaterThan(highRpm);
  });
});

describe('a plan with looks', () => {
  test('shares the error: wider than one look, and told', () => {
    const pulls = [0, 0].flatMap(() => [flat('A', 0), flat('B', 0.01)]);
    const planned = gainOf(pulls, { looks: { at: [4, 8] } });
    const once = gainOf(pulls);
    expect(once.look).toBeNull();
    expect(planned.look).toMatchObject({ number: 1, of: 2 });
    // First of two equal looks, alpha ln(1 + (e - 1) / 2) = 0.0310: z = 2.157 (Lan and DeMets 1983, from memory).
    expect(planned.look!.alphaSpent).toBeCloseTo(0.031, 3);
    expect(planned.look!.criticalZ).toBeCloseTo(2.157, 2);
    expect(planned.critical).toBeGreaterThan(once.critical);
    expect(gainOf(pulls, { looks: { at: [4] } }).critical).toBe(once.critical);
  });

  test('pulls between two looks, before the first and beyond the last have a band too', () => {
    for (const count of [1, 2, 3, 5, 7]) {
      const pulls = Array.from({ length: count }, () => [flat('A', 0), flat('B', 0.01)]).flat();
      const { look, critical } = gainOf(pulls, { looks: { at: [4, 8, 12] } });
      expect(look!.number).toBe(count <= 2 ? 1 : count <= 4 ? 2 : 3);
      expect(critical).toBeGreaterThan(1.96);
    }
  });
});

describe('trends', () => {
  const falling = (levels: number[], hours: (number | null)[] = levels.map(() => null)) =>
    compared(levels.map((level, place) => flat('A', level, { hours: hours[place]! }))).trends[0]!;

  test('four pulls that fall steadily are seen, and by how much', () => {
    const trend = falling([0, -0.005, -0.01, -0.015]);
    expect(trend).toMatchObject({ group: 'A', setUp: 'one', pulls: 4, state: 'seen' });
    expect(trend.perPull).toBeCloseTo(Math.exp(-0.005) - 1, 12);
    // The scatter about the line is none, of 2 degrees: 0.4 % sqrt(20 / 22), over sqrt 5; t at 0.975 with 22: 2.0739.
    const half = (2.0739 * 0.004 * Math.sqrt(20 / 22)) / Math.sqrt(5);
    expect(trend.high).toBeCloseTo(Math.exp(-0.005 + half) - 1, 6);
  });

  test('scatter alone is not one, three pulls cannot tell, three with unlike waits can', () => {
    expect(falling([0, 0.003, -0.002, 0.001]).state).toBe('not-seen');
    expect(falling([0, -0.02, -0.04]).state).toBe('cannot-tell');
    expect(falling([0, -0.02, -0.04], [0, 0.2, 0.4]).state).toBe('cannot-tell');
    expect(falling([0, -0.02, -0.04], [0, 0.1, 0.4]).state).toBe('seen');
  });

  test('goes by time where the pulls come in another order', () => {
    expect(falling([-0.01, 0, -0.015, -0.005], [2, 0, 3, 1]).perPull).toBeCloseTo(Math.exp(-0.005) - 1, 12);
  });
});

describe('what moves nothing', () => {
  const LEVELS = fc.array(fc.double({ min: -0.02, max: 0.02, noNaN: true }), { minLength: 4, maxLength: 9 });
  const HOURS = fc.double({ min: 0, max: 4, noNaN: true });
  const mixed = fc
    .tuple(LEVELS, fc.array(HOURS, { minLength: 9, maxLength: 9 }), fc.nat())
    .map(([levels, hours, seed]) =>
      levels.map((level, place) =>
        flat(place % 2 === 0 ? 'A' : 'B', level, {
          hours: hours[place]!,
          setUp: (seed >> place) % 3 === 0 ? null : `set-up ${(seed >> place) % 2}`,
          session: (seed >> (place + 3)) % 2 === 0 ? 'monday' : 'tuesday',
        }),
      ),
    );
  const settings = { seed: 20261125, numRuns: 60 };

  test('the size of the engine', () => {
    fc.assert(
      fc.property(mixed, fc.double({ min: 0.1, max: 10, noNaN: true }), (pulls, factor) => {
        const one = gainOf(pulls);
        const other = gainOf(
          pulls.map((pull) => ({ ...pull, power: Float64Array.from(pull.power, (power) => factor * power) })),
        );
        expect(other.logGain).toBeCloseTo(one.logGain, 9);
        expect(other.standardError).toBeCloseTo(one.standardError, 9);
        expect(other.verdict).toBe(one.verdict);
      }),
      settings,
    );
  });

  test('the order in which pulls are listed', () => {
    fc.assert(
      fc.property(mixed, (pulls) => {
        const one = gainOf(pulls);
        const other = gainOf([...pulls].reverse());
        expect(other.group).toBe(one.group);
        expect(other.logGain).toBeCloseTo(one.logGain, 9);
        expect(other.standardError).toBeCloseTo(one.standardError, 9);
        expect(other.critical).toBeCloseTo(one.critical, 6);
      }),
      settings,
    );
  });

  test('groups changed over turn the sign and nothing else', () => {
    fc.assert(
      fc.property(mixed, (pulls) => {
        const one = gainOf(pulls);
        const other = gainOf(pulls, { baseline: 'B' });
        expect(other.logGain).toBeCloseTo(-one.logGain, 9);
        expect(other.standardError).toBeCloseTo(one.standardError, 9);
        expect(other.low).toBeCloseTo(1 / (1 + one.high) - 1, 9);
      }),
      settings,
    );
  });

  test('weights of a group sum to one whatever the design, and no variance is below none', () => {
    fc.assert(
      fc.property(mixed, (pulls) => {
        const { weights, parts } = gainOf(pulls);
        const sum = (group: string) =>
          weights.reduce((total, weight, place) => total + (pulls[place]!.group === group ? weight : 0), 0);
        expect(sum('B')).toBeCloseTo(1, 8);
        expect(sum('A')).toBeCloseTo(-1, 8);
        for (const part of Object.values(parts)) expect(part).toBeGreaterThanOrEqual(0);
      }),
      settings,
    );
  });

  test('pulls of one curve over different windows show no gain', () => {
    const part = (group: string, from: number, to: number) => {
      const pull = flat(group, 0);
      return {
        ...pull,
        engineSpeedRpm: SPEEDS.slice(from, to),
        power: Float64Array.from(pull.power).slice(from, to),
      };
    };
    const { gains, windowRpm } = compared([part('A', 0, 20), part('B', 5, 31)]);
    expect(windowRpm).toEqual([3500, 4900]);
    expect(gains[0]!.logGain).toBeCloseTo(0, 12);
  });
});

describe('what cannot be compared is said', () => {
  const codes = (pulls: PullArray[]) =>
    compareArrays(pulls, { history: inventedHistory(), baseline: 'A' }).remarks.map(({ code }) => code);
  const over = (group: string, speeds: number[], power: number[]) =>
    flat(group, 0, { engineSpeedRpm: speeds, power });

  test('nothing, nothing shared, speeds that fall', () => {
    expect(codes([])).toEqual(['no-pulls']);
    expect(codes([over('A', [3000, 3100], [1, 1]), over('B', [4000, 4100], [1, 1])])).toEqual([
      'no-shared-speed',
    ]);
    expect(codes([over('A', [3000, 3100], [Number.NaN, Number.NaN]), flat('B', 0)])).toEqual([
      'no-shared-speed',
    ]);
    expect(codes([over('A', [3000, 2900], [1, 1])])).toEqual(['speeds-not-rising']);
  });

  test('one group, one pull, no baseline: no gain, but what is known', () => {
    const alone = compared([flat('A', 0)]);
    expect(alone).toMatchObject({ gains: [], trends: [] });
    expect(alone.spreads.pull.sigma).toBe(0.004);
    expect(codes([flat('A', 0), flat('A', 0)])).toEqual(['one-group']);
    expect(codes([flat('B', 0), flat('C', 0)])).toEqual(['no-baseline']);
  });

  test('times that are no numbers are not known', () => {
    expect(codes([flat('A', 0, { hours: Number.NaN }), flat('B', 0, { hours: 1 })])).toEqual([
      'drift-not-in-band',
    ]);
  });

  test('a group without any scatter, and a history of one degree, have a band', () => {
    const same = [flat('A', 0), flat('A', 0), flat('B', 0), flat('B', 0)];
    const one = spread(0.004, 1);
    const gain = gainOf(same, {
      history: {
        ...inventedHistory(),
        pull: one,
        setUp: one,
        day: one,
        cell: one,
        within: { ...one, lengthRpm: 300 },
      },
    });
    expect(gain.standardError).toBeGreaterThan(0);
    expect(Number.isFinite(gain.curve.criticalSimultaneous)).toBe(true);
    const exact = gainOf(same, { history: inventedHistory({ pull: spread(0, 1e9, 'stated') }) });
    expect(exact.standardError).toBe(0);
    expect(exact.low).toBe(exact.high);
    const none = spread(0, 1e9, 'stated');
    const nothing = gainOf(same, {
      history: {
        pull: none,
        setUp: none,
        day: none,
        cell: none,
        within: { ...none, lengthRpm: 300 },
        driftPerHour: none,
      },
    });
    expect(nothing.curve.simultaneous.every((half) => half === 0)).toBe(true);
  });

  test('one engine speed that all share is enough for a verdict', () => {
    const { curve, verdict } = gainOf([over('A', [4000], [100]), over('B', [3900, 4000], [98, 105])]);
    expect(verdict).toBe('clear');
    expect([...curve.logGain]).toEqual([expect.closeTo(Math.log(1.05), 12)]);
    expect(curve.simultaneous[0]).toBe(curve.pointwise[0]);
  });
});

test('two thousand comparisons with spreads drawn from history: 95 % bands hold what they say', () => {
  const noise = normalNoise(20261125);
  const speeds = Float64Array.from({ length: 12 }, (_, node) => 3000 + 250 * node);
  const drawn = ({ sigma, degreesOfFreedom }: { sigma: number; degreesOfFreedom: number }) => {
    let squares = 0;
    for (let degree = 0; degree < degreesOfFreedom; degree++) squares += noise() ** 2;
    return sigma * Math.sqrt(degreesOfFreedom / squares);
  };
  const history = inventedHistory();
  const cases = 2000;
  let [average, everywhere, falselyClear] = [0, 0, 0];
  for (let run = 0; run < cases; run++) {
    const [sigma, setUp, within] = [drawn(history.pull), drawn(history.setUp), drawn(history.within)];
    const offsets = new Map(['a', 'b'].map((name) => [name, setUp * noise()]));
    const pull = (group: string, name: string): PullArray => {
      const level = offsets.get(name)! + sigma * noise();
      let deviation = noise();
      const alike = Math.exp(-250 / 300);
      return {
        ...flat(group, 0),
        engineSpeedRpm: speeds,
        power: speeds.map((speed) => {
          deviation = alike * deviation + Math.sqrt(1 - alike ** 2) * noise();
          return 60 * speed * Math.exp(level + within * deviation);
        }),
        setUp: name,
      };
    };
    const gain = gainOf([pull('A', 'a'), pull('A', 'a'), pull('B', 'b'), pull('B', 'b')], { history });
    if (gain.low <= 0 && gain.high >= 0) average += 1;
    if (gain.verdict === 'clear') falselyClear += 1;
    if (gain.curve.logGain.every((value, node) => Math.abs(value) <= gain.curve.simultaneous[node]!))
      everywhere += 1;
  }
  // Four binomial deviations of 2,000 cases at 95 % are 1.95 %; the simultaneous band may be wider than it need be.
  expect(average / cases).toBeGreaterThan(0.95 - 0.0195);
  expect(average / cases).toBeLessThan(0.98);
  expect(falselyClear / cases).toBeLessThan(0.05 + 0.0195);
  expect(everywhere / cases).toBeGreaterThan(0.95 - 0.0195);
});
