import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { normalNoise } from './invented-pull.testing.ts';
import { fitPeak } from './peak.ts';

const nodes = (from: number, to: number, step: number) =>
  Float64Array.from({ length: Math.round((to - from) / step) + 1 }, (_, index) => from + step * index);

describe('the peak of bin means', () => {
  test('a parabola gives its own top', () => {
    const x = nodes(3000, 6500, 50);
    const peak = fitPeak(
      x,
      x.map((speed) => 300e3 - 0.02 * (speed - 5480) ** 2),
    )!;
    expect(peak.value).toBeCloseTo(300e3, 4);
    expect(peak.atRpm).toBeCloseTo(5480, 4);
    expect(peak.stillClimbing).toBe(false);
  });

  test('its spread tells how far it is off: two of three within one, nearly all within three', () => {
    const x = nodes(3000, 6500, 50);
    const off = Array.from({ length: 400 }, (_, seed) => {
      const normal = normalNoise(seed);
      const peak = fitPeak(
        x,
        x.map((speed) => 300e3 - 0.02 * (speed - 5480) ** 2 + 800 * normal()),
      )!;
      return {
        value: Math.abs(peak.value - 300e3) / peak.valueSpread!,
        place: Math.abs(peak.atRpm - 5480) / peak.atRpmSpread!,
      };
    });
    const within = (key: 'value' | 'place', limit: number) =>
      off.filter((one) => one[key] < limit).length / off.length;
    for (const key of ['value', 'place'] as const) {
      expect(within(key, 1)).toBeGreaterThan(0.55);
      expect(within(key, 1)).toBeLessThan(0.8);
      // Ten degrees of freedom leave 1.3 % outside three; the place of a flat top has longer tails, being a ratio.
      expect(within(key, 3)).toBeGreaterThan(key === 'value' ? 0.97 : 0.94);
    }
  });

  test('it is not biased like the highest of noisy figures', () => {
    const x = nodes(3000, 6500, 50);
    let [fitted, highest] = [0, 0];
    for (let seed = 0; seed < 200; seed++) {
      const normal = normalNoise(seed + 1000);
      const y = x.map((speed) => 300e3 - 0.02 * (speed - 5480) ** 2 + 800 * normal());
      fitted += (fitPeak(x, y)!.value - 300e3) / 200;
      highest += (Math.max(...y) - 300e3) / 200;
    }
    expect(highest).toBeGreaterThan(700);
    expect(Math.abs(fitted)).toBeLessThan(250);
  });

  test('a curve that climbs to its end is still climbing, read at the end of the window', () => {
    const x = nodes(3000, 6500, 50);
    const peak = fitPeak(
      x,
      x.map((speed) => 40 * speed),
      { endRpm: 6510 },
    )!;
    expect(peak).toMatchObject({ stillClimbing: true, atRpm: 6510 });
    expect(peak.value).toBeCloseTo(40 * 6510, 3);
  });

  test('a flat and noisy top is not carried to an end where the curve has long fallen', () => {
    const x = nodes(2400, 6250, 50);
    for (let seed = 0; seed < 300; seed++) {
      const normal = normalNoise(seed);
      // Flat from 3,800 to 4,800 r/min, a seventh lower at the end; scatter of a log at 20 Hz.
      const y = x.map(
        (speed) => 515 - 4e-5 * Math.max(0, Math.abs(speed - 4300) - 500) ** 2 + 1.5 * normal(),
      );
      const peak = fitPeak(x, y, { endRpm: 6241 })!;
      expect(peak.stillClimbing).toBe(false);
      expect(peak.atRpm).toBeGreaterThan(3300);
      expect(peak.atRpm).toBeLessThan(5300);
      expect(Math.abs(peak.value - 515)).toBeLessThan(6);
    }
  });

  test('a curve that falls from its first node on is highest there and not climbing', () => {
    const x = nodes(3000, 6500, 50);
    expect(
      fitPeak(
        x,
        x.map((speed) => 500 - 0.05 * (speed - 3000)),
      ),
    ).toMatchObject({ atRpm: 3000, stillClimbing: false });
  });

  test('scaling a curve scales its peak', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.5, max: 2, noNaN: true }),
        fc.integer({ min: 3500, max: 6200 }),
        (factor, top) => {
          const x = nodes(3000, 6500, 50);
          const y = x.map((speed) => 300 - 2e-5 * (speed - top) ** 2);
          const [one, other] = [
            fitPeak(x, y)!,
            fitPeak(
              x,
              y.map((value) => factor * value),
            )!,
          ];
          expect(other.value / one.value).toBeCloseTo(factor, 9);
          expect(other.atRpm).toBeCloseTo(one.atRpm, 6);
        },
      ),
      { seed: 20260314, numRuns: 50 },
    );
  });
});

describe('the peak of settled points', () => {
  test('is the exact parabola through three rows at most 500 rpm apart, without a spread', () => {
    const peak = fitPeak([4000, 4500, 5000], [300, 310, 305], { kindOfRows: 'points' })!;
    // Newton's three-point parabola worked by hand: vertex at 4500 + 500 (305 - 300) / (2 (2·310 - 300 - 305)).
    expect(peak.atRpm).toBeCloseTo(4500 + (500 * 5) / 30, 6);
    expect(peak.value).toBeCloseTo(310 + 25 / (8 * 15), 9);
    expect(peak.valueSpread).toBeNull();
  });

  test('is the row itself where neighbours are too far, and where it is the last', () => {
    expect(fitPeak([3000, 4500, 6000], [300, 310, 305], { kindOfRows: 'points' })).toMatchObject({
      atRpm: 4500,
      value: 310,
    });
    expect(fitPeak([4000, 4500, 5000], [300, 310, 320], { kindOfRows: 'points' })).toMatchObject({
      atRpm: 5000,
      value: 320,
      stillClimbing: true,
    });
  });
});

test('no figure, no peak', () => {
  expect(fitPeak([1000, 2000], [Number.NaN, Number.NaN])).toBeNull();
});
