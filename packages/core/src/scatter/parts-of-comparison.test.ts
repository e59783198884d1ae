import { describe, expect, test } from 'vitest';
import { clearRanges } from './clear-ranges.ts';
import { crossoversWithStretch } from './crossovers.ts';
import { errorOfLook, lookAt } from './look-of-plan.ts';
import { addColumns, dot, without } from './orthonormal-columns.ts';
import { verdictWord } from './verdict-word.ts';

describe('verdicts', () => {
  const bands = (half95: number, half80: number, half90: number, gain: number) => ({
    low: gain - half95,
    high: gain + half95,
    likelyLow: gain - half80,
    likelyHigh: gain + half80,
    noDifferenceLargerThan: Math.abs(gain) + half90,
  });

  test('by the narrowest band that says something', () => {
    expect(verdictWord(bands(0.01, 0.006, 0.008, 0.02), 0.01)).toBe('clear');
    expect(verdictWord(bands(0.01, 0.006, 0.008, -0.02), 0.01)).toBe('clear');
    expect(verdictWord(bands(0.01, 0.006, 0.008, 0.008), 0.01)).toBe('likely');
    expect(verdictWord(bands(0.006, 0.004, 0.005, 0.001), 0.01)).toBe('no-difference');
    expect(verdictWord(bands(0.02, 0.013, 0.017, 0.001), 0.01)).toBe('within-noise');
  });

  test('a band that touches zero holds it', () => {
    expect(verdictWord({ ...bands(1, 1, 1, 0), low: 0, high: 0.02 }, 0.01)).toBe('within-noise');
  });
});

describe('looks', () => {
  test('one look, or none planned, shares nothing', () => {
    expect(lookAt(4, null)).toBeNull();
    expect(lookAt(4, { at: [4] })).toBeNull();
    expect(errorOfLook(null, 0.05)).toBe(0.05);
  });

  test('are counted by the pulls at hand', () => {
    const looks = { at: [4, 6, 8] };
    expect(lookAt(4, looks)).toEqual({ number: 1, of: 3, fractions: [0.5] });
    expect(lookAt(5, looks)).toEqual({ number: 2, of: 3, fractions: [0.5, 0.625] });
    expect(lookAt(8, looks)).toEqual({ number: 3, of: 3, fractions: [0.5, 0.75, 1] });
    expect(lookAt(11, looks)).toEqual({ number: 3, of: 3, fractions: [0.5, 0.75, 1] });
  });

  test('together use the error of one', () => {
    // Five equal looks, Pocock's kind of spending at 5 %: 2.438 at the first (Lan and DeMets 1983, from memory).
    const first = lookAt(2, { at: [2, 4, 6, 8, 10] });
    expect(errorOfLook(first, 0.05)).toBeCloseTo(0.01477, 4);
  });
});

describe('columns', () => {
  const of = (...values: number[]) => Float64Array.from(values);

  test('bring one direction each, and none where they are made of earlier ones', () => {
    const basis: Float64Array[] = [];
    expect(addColumns(basis, [of(1, 1, 0, 0), of(0, 0, 1, 1)])).toHaveLength(2);
    expect(addColumns(basis, [of(3, 3, -1, -1), of(0, 0, 0, 0)])).toHaveLength(0);
    const [slope] = addColumns(basis, [of(0, 1, 2, 3)]);
    expect([...slope!].map((value) => value / slope![1]!)).toEqual(
      [-1, 1, -1, 1].map((v) => expect.closeTo(v, 12)),
    );
    expect(dot(slope!, basis[0]!)).toBeCloseTo(0, 14);
  });

  test('leave what is not along them', () => {
    const basis: Float64Array[] = [];
    addColumns(basis, [of(1, 1, 1)]);
    expect([...without(of(1, 2, 6), basis)]).toEqual([-2, -1, 3].map((value) => expect.closeTo(value, 12)));
  });
});

describe('stretches', () => {
  const speeds = [3000, 3100, 3200, 3300, 3400, 3500, 3600];

  test('of one sign, broken by a hole', () => {
    const low = [1, 1, Number.NaN, 1, -1, -3, -3];
    const high = [3, 3, Number.NaN, 3, 1, -1, -1];
    expect(clearRanges(speeds, low, high)).toEqual([
      { fromRpm: 3000, toRpm: 3100, sign: 1 },
      { fromRpm: 3300, toRpm: 3300, sign: 1 },
      { fromRpm: 3500, toRpm: 3600, sign: -1 },
    ]);
  });

  test('a crossover spans what its band cannot tell; open ends stop at the window', () => {
    const gain = [-3, -2, -1, 1, 2, 3, 4];
    const about = (half: number) =>
      crossoversWithStretch(
        speeds,
        gain,
        gain.map((value) => value - half),
        gain.map((value) => value + half),
      );
    expect(about(0.5)).toEqual([{ atRpm: 3250, lowRpm: 3250, highRpm: 3250 }]);
    expect(about(2.5)).toEqual([{ atRpm: 3250, lowRpm: 3100, highRpm: 3400 }]);
    expect(about(10)).toEqual([{ atRpm: 3250, lowRpm: 3000, highRpm: 3600 }]);
  });
});
