import fc from 'fast-check';
import { expect, test } from 'vitest';
import { choleskyOf, solveWith } from './cholesky.ts';

test('worked: the triangle and the solution', () => {
  const lower = choleskyOf([
    [4, 2],
    [2, 5],
  ]);
  expect(lower).toEqual([
    [2, 0],
    [1, 2],
  ]);
  expect(solveWith(lower, [8, 12])).toEqual([1, 2]);
});

test('gives back the x that a right side was made from', () => {
  const entry = fc.double({ min: -1, max: 1, noNaN: true });
  fc.assert(
    fc.property(
      fc.array(entry, { minLength: 25, maxLength: 25 }),
      fc.array(entry, { minLength: 5, maxLength: 5 }),
      (root, x) => {
        // A Aᵀ + 1 is symmetric and positive definite for any A, with eigenvalues of 1 to 26.
        const line = (i: number) => root.slice(5 * i, 5 * i + 5);
        const dot = (one: number[], other: number[]) =>
          one.reduce((sum, value, k) => sum + value * other[k]!, 0);
        const matrix = [0, 1, 2, 3, 4].map((i) =>
          [0, 1, 2, 3, 4].map((j) => dot(line(i), line(j)) + (i === j ? 1 : 0)),
        );
        const found = solveWith(
          choleskyOf(matrix),
          matrix.map((row) => dot(row, x)),
        );
        found.forEach((value, i) => {
          expect(Math.abs(value - x[i]!)).toBeLessThan(1e-13);
        });
      },
    ),
    { seed: 3 },
  );
});

test('what is not positive definite, not square or does not fit throws', () => {
  expect(() =>
    choleskyOf([
      [1, 2],
      [2, 1],
    ]),
  ).toThrow('pivot 2 is -3');
  expect(() => choleskyOf([[Number.NaN]])).toThrow('pivot 1 is NaN');
  expect(() => choleskyOf([[1, 2]])).toThrow('a square matrix needs 1');
  expect(() => solveWith([[1]], [1, 2])).toThrow('the matrix needs 1');
});
