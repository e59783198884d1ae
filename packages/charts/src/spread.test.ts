import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { spread } from './spread.ts';

describe('spread', () => {
  test('leaves what does not touch where it is', () => {
    expect(spread([10, 50, 90], [10, 10, 10], [0, 100])).toEqual([10, 50, 90]);
  });

  test('shares the shift between two that overlap', () => {
    expect(spread([50, 52], [10, 10], [0, 100])).toEqual([46, 56]);
  });

  test('stays inside the room', () => {
    expect(spread([99, 99], [10, 10], [0, 100])).toEqual([85, 95]);
  });

  test('never overlaps, never leaves the room, keeps the order', () => {
    const labels = fc.array(fc.tuple(fc.integer({ min: -20, max: 320 }), fc.integer({ min: 5, max: 30 })), {
      maxLength: 10,
    });
    fc.assert(
      fc.property(labels, (pairs) => {
        const wanted = pairs.map(([at]) => at);
        const heights = pairs.map(([, height]) => height);
        const centres = spread(wanted, heights, [0, 300]);
        const order = wanted
          .map((_, index) => index)
          .sort((one, other) => (wanted[one] ?? 0) - (wanted[other] ?? 0) || one - other);
        let free = 0;
        for (const index of order) {
          const [centre, height] = [centres[index] ?? 0, heights[index] ?? 0];
          expect(centre - height / 2).toBeGreaterThanOrEqual(free - 1e-6);
          free = centre + height / 2;
        }
        expect(free).toBeLessThanOrEqual(300 + 1e-6);
      }),
      { seed: 6 },
    );
  });
});
