import { expect, test } from 'vitest';
import { rootInBracket } from './root-in-bracket.ts';

test('finds the root to the last bits', () => {
  expect(rootInBracket((x) => x * x - 2, { low: 0, high: 2 })).toBeCloseTo(Math.SQRT2, 15);
});

test('stands a jump through zero', () => {
  expect(rootInBracket((x) => (x < 0.3 ? -1 : 1), { low: -1, high: 1 })).toBeCloseTo(0.3, 15);
});

test.each([
  ['a steep end', (x: number) => Math.expm1(30 * x) - 5, { low: -2, high: 2 }, Math.log(6) / 30],
  ['a flat root', (x: number) => (x - 0.3) ** 3, { low: -1, high: 2 }, 0.3],
  ['a kink', (x: number) => (x < 0.7 ? x - 0.7 : 1e9 * (x - 0.7)), { low: 0, high: 1 }, 0.7],
  ['an endless end', (x: number) => Math.log(x), { low: 0, high: 10 }, 1],
])('finds %s', (_, rising, bracket, root) => {
  expect(rootInBracket(rising, bracket)).toBeCloseTo(root, 10);
});

test('asks a smooth function few times', () => {
  let looks = 0;
  const asked = (x: number) => {
    looks += 1;
    return Math.tanh(x - 1) + 0.2;
  };
  expect(rootInBracket(asked, { low: -4, high: 8 })).toBeCloseTo(1 - Math.atanh(0.2), 14);
  expect(looks).toBeLessThan(20);
});

test('no change of sign, no root', () => {
  expect(rootInBracket((x) => x * x + 1, { low: 0, high: 2 })).toBeNaN();
  expect(rootInBracket(() => Number.NaN, { low: 0, high: 2 })).toBeNaN();
});
