import { expect, test } from 'vitest';
import { leastSquares } from './least-squares.ts';

test('a straight line is that of the normal equations, with their covariance', () => {
  const x = [0, 1, 2, 3];
  const y = [1, 3, 2, 5];
  const fit = leastSquares(([a, b]) => x.map((at, row) => a! + b! * at - y[row]!), [10, -4], [0.1, 0.1]);
  // By hand: n 4, Σx 6, Σx² 14, Σy 11, Σxy 22; determinant 20.
  expect(fit.at[0]).toBeCloseTo((14 * 11 - 6 * 22) / 20, 8);
  expect(fit.at[1]).toBeCloseTo((4 * 22 - 6 * 11) / 20, 8);
  expect(fit.covariance[0]![0]).toBeCloseTo(14 / 20, 8);
  expect(fit.covariance[0]![1]).toBeCloseTo(-6 / 20, 8);
  expect(fit.isSettled).toBe(true);
});

/**
 * Rosenbrock's valley as residuals 10 (y - x²) and 1 - x, from the usual start (-1.2, 1): the least is at (1, 1), where it is 0.
 * Moré, Garbow and Hillstrom 1981, function 1, from memory.
 */
test('Rosenbrock’s valley is walked to its end', () => {
  const fit = leastSquares(([x, y]) => [10 * (y! - x! * x!), 1 - x!], [-1.2, 1], [1e-4, 1e-4]);
  expect(fit.at[0]).toBeCloseTo(1, 6);
  expect(fit.at[1]).toBeCloseTo(1, 6);
});

test('a wall of figures that are not numbers is kept away from', () => {
  const fit = leastSquares(([x]) => [Math.log(x!), 0.1 * (x! - 2)], [3], [1e-3]);
  expect(Number.isFinite(fit.at[0]!)).toBe(true);
  expect(fit.at[0]!).toBeGreaterThan(1);
  expect(() => leastSquares(([x]) => [Math.log(x!)], [-1], [0.1])).toThrow(/not finite/);
});
