import { expect, test } from 'vitest';
import { gaussLegendre } from './gauss-legendre.ts';

test('points and weights of the three-point rule (Abramowitz and Stegun, table 25.4, from memory)', () => {
  const { nodes, weights } = gaussLegendre(3);
  [-0.774596669241483, 0, 0.774596669241483].forEach((x, i) => {
    expect(nodes[i]).toBeCloseTo(x, 14);
  });
  [5 / 9, 8 / 9, 5 / 9].forEach((weight, i) => {
    expect(weights[i]).toBeCloseTo(weight, 14);
  });
});

test.each([1, 2, 5, 16, 61, 200])('%i points are exact up to the power 2n - 1', (count) => {
  const { nodes, weights } = gaussLegendre(count);
  for (const power of [0, 1, count, 2 * count - 2, 2 * count - 1]) {
    const found = nodes.reduce((sum, x, i) => sum + weights[i]! * x ** power, 0);
    expect(found).toBeCloseTo(power % 2 === 1 ? 0 : 2 / (power + 1), 12);
  }
});

test('a count that is none throws', () => {
  expect(() => gaussLegendre(0)).toThrow('count of points is 0');
  expect(() => gaussLegendre(2.5)).toThrow('whole number');
});
