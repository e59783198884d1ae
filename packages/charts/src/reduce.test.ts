import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { reducedToColumns } from './reduce.ts';

describe('reducedToColumns', () => {
  test('keeps first, lowest, highest and last of each pixel column in their order', () => {
    expect(reducedToColumns({ x: [0, 0.1, 0.2, 0.3, 0.4, 0.9, 1], y: [5, 9, 6, 1, 3, 4, 7] })).toEqual({
      x: [0, 0.1, 0.3, 0.9, 1],
      y: [5, 9, 1, 4, 7],
    });
  });

  test('keeps breaks', () => {
    const { y } = reducedToColumns({ x: [0, Number.NaN, 0.5], y: [1, Number.NaN, 2] });
    expect(y).toEqual([1, Number.NaN, 2]);
  });

  test('loses no extreme of any column and stays within four points a column', () => {
    const heights = fc.array(fc.integer({ min: -1000, max: 1000 }), { minLength: 1, maxLength: 2000 });
    fc.assert(
      fc.property(heights, (y) => {
        const x = y.map((_, index) => (index / y.length) * 50);
        const reduced = reducedToColumns({ x, y });
        expect(reduced.x.length).toBeLessThanOrEqual(200);
        for (let column = 0; column < 50; column += 1) {
          const inColumn = (all: readonly number[], heightsOfAll: readonly number[]) =>
            heightsOfAll.filter((_, index) => Math.floor(all[index] ?? 0) === column);
          const [before, after] = [inColumn(x, y), inColumn(reduced.x, reduced.y)];
          expect(Math.max(...after)).toBe(Math.max(...before));
          expect(Math.min(...after)).toBe(Math.min(...before));
          expect(after[0]).toBe(before[0]);
          expect(after.at(-1)).toBe(before.at(-1));
        }
      }),
      { seed: 5, numRuns: 40 },
    );
  });
});
