import { DEVIATION_FROM_MAD, median, medianAbsoluteDeviation } from '@pullbook/core/numeric';
import { findSpikes } from '@pullbook/core/pull';
import { describe, expect, test } from 'vitest';

/**
 * Hampel's identifier as it stands in public implementations (window of seven, k = 1.4826, three sigma): median 1.02, median
 * absolute deviation 0.07, sigma 0.103782, score 38.35, so the fourth value is replaced by 1.02. Worked by hand from the
 * definition (Hampel 1974; Pearson 2002, "Outliers in process modeling and identification").
 */
const WINDOW = Float64Array.of(1.1, 0.9, 1.05, 5, 1, 0.95, 1.02);

describe('Hampel’s identifier', () => {
  test('median, deviation and score of the worked window', () => {
    const deviation = medianAbsoluteDeviation(WINDOW);
    expect(median(WINDOW)).toBe(1.02);
    expect(deviation).toBeCloseTo(0.07, 12);
    expect(DEVIATION_FROM_MAD * deviation).toBeCloseTo(0.103782, 9);
    expect((5 - 1.02) / (DEVIATION_FROM_MAD * deviation)).toBeCloseTo(38.35, 2);
  });

  test('the spike test names that row alone, and what its neighbours say lies at the window’s median', () => {
    const spikes = findSpikes(WINDOW);
    expect(spikes.map((spike) => spike.row)).toEqual([3]);
    // Ours leaves the row itself out of the median, so it may differ by half the step between the middle values.
    expect(Math.abs(spikes[0]!.expected - 1.02)).toBeLessThanOrEqual(0.0101);
  });
});

test('the factor is the one of normal scatter', () => {
  // 1 / Φ⁻¹(3/4) = 1 / 0.674490 (printed in tables of the normal distribution: 0.6745).
  expect(DEVIATION_FROM_MAD).toBeCloseTo(1 / 0.67449, 4);
});
