import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { clipped, heightAt } from './clip.ts';

const NONE = Number.NaN;

describe('clipped', () => {
  test('sets points on the edges where the curve crosses them', () => {
    expect(clipped([0, 10, 20], [0, 100, 0], [5, 15])).toEqual({
      x: [5, 10, 15, NONE],
      y: [50, 100, 50, NONE],
    });
  });

  test('keeps the piece of one long step over the whole range', () => {
    expect(clipped([0, 100], [0, 100], [40, 60])).toEqual({ x: [40, 60, NONE], y: [40, 60, NONE] });
  });

  test('breaks where there is no value', () => {
    expect(clipped([1, 2, 3, 4], [1, null, 3, Number.POSITIVE_INFINITY], [0, 9])).toEqual({
      x: [1, NONE, 3, NONE],
      y: [1, NONE, 3, NONE],
    });
  });

  test('works for a curve that runs down in x', () => {
    expect(clipped([20, 10, 0], [0, 100, 0], [5, 15]).x).toEqual([15, 10, 5, NONE]);
  });

  test('what is kept lies in the range, on the curve', () => {
    const curve = fc.array(fc.tuple(fc.integer({ min: 0, max: 100 }), fc.integer({ min: -50, max: 50 })), {
      maxLength: 30,
    });
    fc.assert(
      fc.property(curve, (pairs) => {
        const sorted = [...new Map(pairs)].sort(([one], [other]) => one - other);
        const x = sorted.map(([at]) => at);
        const y = sorted.map(([, height]) => height);
        const kept = clipped(x, y, [20, 70]);
        kept.x.forEach((at, index) => {
          if (Number.isNaN(at)) return;
          expect(at >= 20 && at <= 70).toBe(true);
          expect(heightAt(x, y, at)).toBeCloseTo(kept.y[index] ?? NONE, 9);
        });
        for (const at of x.filter((one) => one >= 20 && one <= 70)) expect(kept.x).toContain(at);
      }),
      { seed: 4 },
    );
  });
});

describe('heightAt', () => {
  test('is on the straight between two points, and nothing beside the curve or in a gap', () => {
    const x = [1000, 2000, 3000, 4000];
    const y = [10, 20, null, 40];
    expect(heightAt(x, y, 1250)).toBe(12.5);
    expect(heightAt(x, y, 2000)).toBe(20);
    expect(heightAt(x, y, 2500)).toBeNull();
    expect(heightAt(x, y, 999)).toBeNull();
    expect(heightAt(x, y, 4001)).toBeNull();
  });
});
