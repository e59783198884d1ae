import fc from 'fast-check';
import { expect, test } from 'vitest';
import { fitPolynomial, polynomialAt, polynomialSpreadAt } from './polynomial-fit.ts';

test('any quadratic is given back', () => {
  const coefficient = fc.double({ min: -10, max: 10, noNaN: true });
  fc.assert(
    fc.property(coefficient, coefficient, coefficient, (a, b, c) => {
      const x = [3000, 3050, 3125, 3300, 3410];
      const at = (speed: number) => a + b * (speed / 1000) + c * (speed / 1000) ** 2;
      const fit = fitPolynomial(x, x.map(at), 2)!;
      expect(polynomialAt(fit, 3200)).toBeCloseTo(at(3200), 8);
    }),
    { seed: 20260314 },
  );
});

test('the middle of five and seven even points is smoothed by the Savitzky-Golay weights', () => {
  // Quadratic, (-3 12 17 12 -3)/35 and (-2 3 6 7 6 3 -2)/21 (Savitzky and Golay 1964, table; from memory, agrees with the definition).
  for (const [weights, divisor] of [
    [[-3, 12, 17, 12, -3], 35],
    [[-2, 3, 6, 7, 6, 3, -2], 21],
  ] as const) {
    const half = (weights.length - 1) / 2;
    weights.forEach((weight, place) => {
      const x = weights.map((_, index) => index - half);
      const y = weights.map((_, index) => (index === place ? 1 : 0));
      expect(polynomialAt(fitPolynomial(x, y, 2)!, 0)).toBeCloseTo(weight / divisor, 12);
    });
  }
});

test('a weight of two is the same as a row given twice', () => {
  const [x, y] = [
    [1, 2, 3, 4, 5],
    [2, 3, 7, 6, 5],
  ];
  const weighted = fitPolynomial(x, y, 2, [1, 1, 2, 1, 1])!;
  const doubled = fitPolynomial([...x, 3], [...y, 7], 2)!;
  for (const at of [0, 2.5, 6]) expect(polynomialAt(weighted, at)).toBeCloseTo(polynomialAt(doubled, at), 10);
});

test('too few different places make no fit, and no spare row no spread', () => {
  expect(fitPolynomial([1, 1, 2], [1, 2, 3], 2)).toBeNull();
  expect(polynomialSpreadAt(fitPolynomial([1, 2, 3], [1, 5, 2], 2)!, 2)).toBeNull();
});
