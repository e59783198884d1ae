// Means, differences of two means and how many repeats a difference needs: worked and published examples through the functions
// that the comparison uses.
import {
  mean,
  noncentralTCdf,
  normalQuantile,
  sampleDeviation,
  studentTCdf,
  studentTQuantile,
} from '@pullbook/core/numeric';
import { compareArrays, equivalentDegreesOfFreedom, type ScatterHistory } from '@pullbook/core/scatter';
import { describe, expect, test } from 'vitest';
import { relativeError } from './read-csv.ts';

/** Student's sleep data (Biometrika 1908), from memory: hours gained by ten sleepers under two drugs. */
const FIRST = [0.7, -1.6, -0.2, -1.2, -0.1, 3.4, 3.7, 0.8, 0, 2.0];
const SECOND = [1.9, 0.8, 1.1, 0.1, -0.1, 4.4, 5.5, 1.6, 4.6, 3.4];

test('mean of five with its 95 % band: 2.0 within 0.981622 (worked outside this project)', () => {
  const values = [2.0, 1.5, 3.0, 2.5, 1.0];
  const deviation = sampleDeviation(values)!;
  expect(mean(values)).toBe(2);
  expect(deviation).toBeCloseTo(0.790569, 6);
  expect((studentTQuantile(0.975, 4) * deviation) / Math.sqrt(5)).toBeCloseTo(0.981622, 6);
});

describe('Student’s sleep data, as printed by statistics programs, from memory', () => {
  const difference = mean(FIRST) - mean(SECOND);
  const error = Math.hypot(sampleDeviation(FIRST)!, sampleDeviation(SECOND)!) / Math.sqrt(10);

  test('unequal scatter (Welch): t -1.8608, with the printed 17.776 degrees of freedom p 0.07939', () => {
    expect(difference / error).toBeCloseTo(-1.8608, 4);
    expect(2 * studentTCdf(difference / error, 17.776)).toBeCloseTo(0.07939, 5);
  });

  test('in pairs: t -4.0621, p 0.002833', () => {
    const differences = FIRST.map((value, i) => value - SECOND[i]!);
    const t = mean(differences) / (sampleDeviation(differences)! / Math.sqrt(10));
    expect(t).toBeCloseTo(-4.0621, 4);
    expect(2 * studentTCdf(t, 9)).toBeCloseTo(0.002833, 6);
  });
});

describe('parts that are known with different degrees of freedom: Fisher and Yates, table VI (5 %, Behrens), from memory', () => {
  // By angle: the first part's share of the variance is the square of its sine. SciPy's quadrature gives the same figures but for
  // 6 and 6 at 45 degrees, 2.436.
  const angles = [0, 15, 30, 45, 60, 75, 90];
  test.each([
    { first: 6, second: 6, row: [2.447, 2.44, 2.435, 2.435, 2.435, 2.44, 2.447] },
    { first: 6, second: 8, row: [2.306, 2.31, 2.331, 2.364, 2.398, 2.43, 2.447] },
    { first: 6, second: 12, row: [2.179, 2.193, 2.239, 2.301, 2.367, 2.423, 2.447] },
    { first: 6, second: 24, row: [2.064, 2.088, 2.156, 2.247, 2.342, 2.418, 2.447] },
    { first: 8, second: 8, row: [2.306, 2.3, 2.294, 2.292, 2.294, 2.3, 2.306] },
  ])('$first and $second degrees of freedom', ({ first, second, row }) => {
    row.forEach((printed, i) => {
      const share = Math.sin((angles[i]! * Math.PI) / 180) ** 2;
      const df = equivalentDegreesOfFreedom([
        { variance: share, degreesOfFreedom: first },
        { variance: 1 - share, degreesOfFreedom: second },
      ]);
      // Half of the last printed digit, one digit where the table and the quadrature differ, and the 0.003 that ours promises.
      expect(Math.abs(studentTQuantile(0.975, df) - printed)).toBeLessThan(0.004);
    });
  });
});

describe('the comparison itself, where it comes down to the textbook', () => {
  // History that the repeats contradict is set aside, and with one set-up and no drift two groups are left: the pooled t test.
  const known = (sigma: number) => ({ sigma, degreesOfFreedom: 1000, from: 'stated' as const });
  const history: ScatterHistory = {
    pull: known(1e-7),
    setUp: known(0),
    day: known(0),
    cell: known(0),
    within: { ...known(0), lengthRpm: 300 },
    driftPerHour: known(0),
  };
  /** An hour of sleep is a thousandth of the logarithm of power. */
  const HOUR = 1e-3;
  const speeds = [2000, 2100, 2200];
  const pulls = [
    ...FIRST.map((hours) => ({ group: 'first', hours })),
    ...SECOND.map((hours) => ({ group: 'second', hours })),
  ].map(({ group, hours }) => ({
    engineSpeedRpm: speeds,
    power: speeds.map(() => 1e5 * Math.exp(hours * HOUR)),
    group,
    setUp: 'one',
    session: 'one',
    cell: null,
    hours: null,
  }));
  const compared = compareArrays(pulls, { history, baseline: 'first' });
  if (!compared.ok) throw new Error(compared.remarks[0]!.message);
  const [gain] = compared.value.gains;
  const { logGain, standardError, degreesOfFreedom, low, high, noDifferenceLargerThan } = gain!;

  test('pooled t -1.8608 with 18 degrees of freedom, p 0.07919', () => {
    expect(compared.value.spreads.pull.historySetAside).toBe(true);
    expect(degreesOfFreedom).toBeCloseTo(18, 9);
    expect(logGain / standardError).toBeCloseTo(1.8608, 4);
    expect(2 * studentTCdf(-logGain / standardError, 18)).toBeCloseTo(0.07919, 5);
  });

  test('95 % band -0.203874 to 3.363874 h, as statistics programs print it, from memory', () => {
    expect(Math.log1p(low) / HOUR).toBeCloseTo(-0.203874, 5);
    expect(Math.log1p(high) / HOUR).toBeCloseTo(3.363874, 5);
  });

  test('two one-sided tests: the difference told as the largest is the one each refuses at 5 %', () => {
    const largest = Math.log1p(noDifferenceLargerThan);
    // Of the two hypotheses "the gain is at least this" and "at most minus this" the first is the harder to refuse: p = 0.05.
    expect(studentTCdf((logGain - largest) / standardError, 18)).toBeCloseTo(0.05, 9);
    expect(1 - studentTCdf((logGain + largest) / standardError, 18)).toBeLessThan(0.05);
    // 1.58 + 1.734064 × 0.849091 h, with t from the printed table.
    expect(largest / HOUR).toBeCloseTo(1.58 + 1.734064 * 0.849091, 4);
  });
});

test('repeatability limit of ISO 5725: two repeats differ by at most 2.8 deviations in 95 of 100 (from memory)', () => {
  const factor = normalQuantile(0.975) * Math.SQRT2;
  expect(factor).toBeCloseTo(2.771808, 6);
  expect(Math.round(factor * 10) / 10).toBe(2.8);
  expect(factor * 1.5).toBeCloseTo(4.158, 3);
});

describe('how many repeats a side, two-sided 5 %', () => {
  /** Chance to see a difference of `size` deviations with `count` a side. */
  function power(count: number, size: number, known: boolean): number {
    const df = known ? Number.POSITIVE_INFINITY : 2 * count - 2;
    const shift = size * Math.sqrt(count / 2);
    const limit = studentTQuantile(0.975, df);
    return 1 - noncentralTCdf(limit, df, shift) + noncentralTCdf(-limit, df, shift);
  }

  test.each([
    [1, 16],
    [0.5, 63],
    [2, 4],
  ])('scatter known: a difference of %f deviations needs %i for 80 %', (size, count) => {
    expect(2 * ((normalQuantile(0.975) + normalQuantile(0.8)) / size) ** 2).toBeLessThan(count);
    expect(power(count, size, true)).toBeGreaterThanOrEqual(0.8);
    expect(power(count - 1, size, true)).toBeLessThan(0.8);
  });

  // Cohen 1988, table 2.4.1, counts from memory; the chances by SciPy.
  test.each([
    [0.2, 394, 0.8006],
    [0.5, 64, 0.80146],
    [0.8, 26, 0.80749],
    [1.0, 17, 0.80704],
  ])('scatter from the repeats: %f deviations, %i a side see it with %f', (size, count, chance) => {
    expect(Math.abs(power(count, size, false) - chance)).toBeLessThan(0.00005);
    expect(power(count - 1, size, false)).toBeLessThan(0.8);
  });

  test('the chance rises to certainty, and is 5 % for no difference', () => {
    expect(power(5, 0, false)).toBeCloseTo(0.05, 10);
    expect(relativeError(power(5, 8, false), 1)).toBeLessThan(1e-6);
  });
});
