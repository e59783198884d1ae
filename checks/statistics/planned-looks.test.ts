// Sources: Armitage, McPherson and Rowe 1969 (repeated tests), Pocock 1977 (equal limits), Lan and DeMets 1983 (spending), all
// from memory of their tables.
import { normalQuantile } from '@pullbook/core/numeric';
import { alphaSpent, chanceOfCalling, criticalZAtLook } from '@pullbook/core/scatter';
import { describe, expect, test } from 'vitest';

const equal = (looks: number) => Array.from({ length: looks }, (_, i) => (i + 1) / looks);

test.each([
  [1, 0.05],
  [2, 0.083],
  [3, 0.107],
  [4, 0.126],
  [5, 0.142],
  [10, 0.193],
])('%i looks at the 5 %% limit call nothing a difference with chance %f', (looks, chance) => {
  const limits = equal(looks).map(() => 1.959964);
  expect(Math.abs(chanceOfCalling(equal(looks), limits) - chance)).toBeLessThan(0.00051);
});

test.each([
  [2, 2.178],
  [3, 2.289],
  [4, 2.361],
  [5, 2.413],
])('%i looks with the constant limit %f: 5 %% in all', (looks, limit) => {
  // The printed limit is good to half a thousandth, which is 1e-4 of the chance.
  expect(
    Math.abs(
      chanceOfCalling(
        equal(looks),
        equal(looks).map(() => limit),
      ) - 0.05,
    ),
  ).toBeLessThan(1e-4);
});

describe('error shared over the looks', () => {
  test('five equal looks: 2.438, 2.427, 2.410, 2.397, 2.386', () => {
    [2.438, 2.427, 2.41, 2.397, 2.386].forEach((limit, i) => {
      expect(Math.abs(criticalZAtLook(equal(5), i + 1, 0.05) - limit)).toBeLessThan(0.00051);
    });
  });

  test('all is spent at the end, whatever the looks', () => {
    for (const fractions of [[1], [0.5, 1], [0.1, 0.15, 0.9, 0.95, 1], [0.3, 0.31, 1]]) {
      const limits = fractions.map((_, i) => criticalZAtLook(fractions, i + 1, 0.05));
      expect(chanceOfCalling(fractions, limits)).toBeCloseTo(0.05, 6);
      limits.forEach((_, i) => {
        const part = fractions.slice(0, i + 1);
        expect(chanceOfCalling(part, limits.slice(0, i + 1))).toBeCloseTo(alphaSpent(part[i]!, 0.05), 6);
      });
    }
  });

  test('one look is the plain limit', () => {
    expect(criticalZAtLook([1], 1, 0.05)).toBeCloseTo(normalQuantile(0.975), 9);
    expect(alphaSpent(1, 0.05)).toBeCloseTo(0.05, 15);
    expect(alphaSpent(0, 0.05)).toBe(0);
  });

  test('looks that do not rise, or none, are a mistake of the caller', () => {
    expect(() => criticalZAtLook([0.5, 0.5], 1, 0.05)).toThrow('must rise');
    expect(() => criticalZAtLook([0.5, 1.1], 1, 0.05)).toThrow('must rise');
    expect(() => criticalZAtLook([], 1, 0.05)).toThrow('no look is planned');
    expect(() => criticalZAtLook([0.5, 1], 3, 0.05)).toThrow('it must be 1 to 2');
    expect(() => chanceOfCalling([0.5, 1], [2])).toThrow('one each');
  });
});
