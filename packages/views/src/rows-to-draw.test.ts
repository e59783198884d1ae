import fc from 'fast-check';
import { expect, test } from 'vitest';
import { rowsToDraw } from './rows-to-draw.ts';

test('a short recording is drawn row by row', () => {
  expect(rowsToDraw([5, 6, 7, 8], 1, 3, 2)).toEqual([1, 2, 3]);
  expect(rowsToDraw([], 0, -1, 2)).toEqual([]);
});

test('a long one keeps first, last, lowest and highest of each column, ascending and within bounds', () => {
  const values = fc.array(fc.oneof(fc.integer({ min: -1000, max: 1000 }), fc.constant(Number.NaN)), {
    minLength: 50,
    maxLength: 3000,
  });
  fc.assert(
    fc.property(values, fc.integer({ min: 1, max: 12 }), (all, columns) => {
      const rows = rowsToDraw(all, 0, all.length - 1, columns);
      expect(rows.length).toBeLessThanOrEqual(4 * columns);
      expect(rows).toEqual([...new Set(rows)].toSorted((one, other) => one - other));
      expect(rows[0]).toBe(0);
      expect(rows.at(-1)).toBe(all.length - 1);
      const finite = (some: number[]) => some.filter(Number.isFinite);
      expect(Math.max(...finite(rows.map((row) => all[row]!)))).toBe(Math.max(...finite(all)));
      expect(Math.min(...finite(rows.map((row) => all[row]!)))).toBe(Math.min(...finite(all)));
    }),
    { seed: 7, numRuns: 60 },
  );
});
