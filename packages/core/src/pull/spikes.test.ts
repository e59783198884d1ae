import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { normalNoise } from './invented-pull.testing.ts';
import { findSpikes } from './spikes.ts';

describe('spikes', () => {
  test('planted ones are all found in a noisy rising channel, and named with what the neighbours say', () => {
    fc.assert(
      fc.property(
        fc.integer(),
        fc.integer({ min: 20, max: 570 }),
        fc.constantFrom(-1, 1),
        (seed, row, sign) => {
          const normal = normalNoise(seed);
          const values = Float64Array.from({ length: 600 }, (_, index) => 200 + 0.3 * index + normal());
          const clean = values[row]!;
          values[row] = clean + sign * 25;
          const spike = findSpikes(values).find((one) => one.row === row);
          expect(spike?.value).toBe(clean + sign * 25);
          expect(Math.abs(spike!.expected - (200 + 0.3 * row))).toBeLessThan(3);
        },
      ),
      { seed: 20260314, numRuns: 60 },
    );
  });

  test('good rows are rarely flagged: normal scatter lies beyond three deviations in 0.27 % of rows', () => {
    const normal = normalNoise(7);
    const values = Float64Array.from(
      { length: 20_000 },
      (_, index) => 300 + 100 * Math.sin(index / 3000) + 4 * normal(),
    );
    // The local trend is itself a little uncertain, so a share a little over 0.27 % is due; 4 % would be plain deviations.
    const share = findSpikes(values).length / values.length;
    expect(share).toBeGreaterThan(0.001);
    expect(share).toBeLessThan(0.01);
  });

  test('a noise-free, a constant and a quantised channel have none', () => {
    expect(findSpikes(Float64Array.from({ length: 300 }, (_, row) => 400 - (row / 20 - 8) ** 2))).toEqual([]);
    expect(findSpikes(new Float64Array(300).fill(85))).toEqual([]);
    expect(findSpikes(Float64Array.from({ length: 300 }, (_, row) => Math.round(360 + row / 100)))).toEqual(
      [],
    );
    const normal = normalNoise(3);
    expect(findSpikes(Float64Array.from({ length: 300 }, () => Math.round(0.25 * normal())))).toEqual([]);
  });

  test('several rows in a row stand out as well', () => {
    const values = Float64Array.from({ length: 200 }, (_, row) => 300 + Math.sin(row));
    for (const row of [100, 101, 102]) values[row] = 210;
    expect(findSpikes(values).map((one) => one.row)).toEqual([100, 101, 102]);
  });

  test('missing rows are passed over', () => {
    const values = Float64Array.from({ length: 60 }, (_, row) =>
      row % 3 === 0 ? Number.NaN : 100 + (row % 2),
    );
    values[31] = 180;
    expect(findSpikes(values).map((one) => one.row)).toEqual([31]);
  });
});
